/** Moves that need no other part: the cores in another order, in the air or in the liquid. */
import { isFrontFirst } from '$lib/solver/loop/order';
import type { Part } from '../file/parts';
import { evaluate } from '../evaluate';
import type { Entries, Job } from '../types';

export interface OrderMove {
  readonly id: 'order' | 'plumbing';
  readonly name: string;
  readonly changes: Entries;
  readonly parts: readonly Part[];
}

/** The other orders that the job allows to be tried. */
export function orderMoves(job: Job): OrderMove[] {
  const { values, loop } = evaluate(job).asFound;
  const allowed = (path: string) => values[path]!.choice === 'try';
  const move = (
    id: OrderMove['id'],
    name: string,
    [path, other]: readonly [path: string, other: string],
    cost: string,
  ): OrderMove => {
    const price = values[cost]!.text as string;
    const parts = [{ what: name, count: '1', price, mass: '0 kg', kind: id }];
    return { id, name, changes: { [path]: { is: other } }, parts };
  };

  const { stackHeat, stackLoss, stackPlace = 'in-front' } = loop.airPath;
  const others = stackHeat > 0 || stackLoss.points.some(({ loss }) => loss > 0);
  const ahead = stackPlace === 'in-front';
  const inAir = move(
    'order',
    ahead ? 'Front exchanger ahead of the other cores' : 'Other cores ahead of the front exchanger',
    ['airPath.stackPlace', ahead ? 'behind' : 'in-front'],
    'plan.orderCost',
  );
  const frontFirst = isFrontFirst(loop);
  const inLiquid = move(
    'plumbing',
    frontFirst ? 'Liquid to the charge cooler first' : 'Liquid to the front exchanger first',
    ['loop.liquidOrder', frontFirst ? 'cooler-first' : 'front-first'],
    'plan.liquidOrderCost',
  );
  return [
    ...(allowed('plan.order') && others ? [inAir] : []),
    ...(allowed('plan.liquidOrder') ? [inLiquid] : []),
  ];
}
