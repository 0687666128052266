/**
 * Every kind of change that a candidate can make moves the results the way physics says. One row a kind:
 * what is changed on the demonstration job's loop as found, and of each result whether it must rise,
 * fall or stay, with the reason. Signs only, from the balances named; no value of the code's own.
 */
import { describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { sideWith, evaluate, type Side } from '$lib/job/evaluate';
import { assess, currentOf, pumpCurrentOf, type Assessed } from '$lib/job/upgrades/assess';
import { kindOf, MOVE_KINDS, movesOf, together } from '$lib/job/upgrades/moves';
import { limitsOf, upgradesKey } from '$lib/job/upgrades/upgrades';
import type { Entries, Job } from '$lib/job/types';

type Way = 'rises' | 'falls' | 'stays';
type Read = keyof Pick<
  Assessed,
  | 'chargeCruise'
  | 'chargePull'
  | 'chargeAfter'
  | 'tankCruise'
  | 'tankPeak'
  | 'suction'
  | 'boiling'
  | 'freezing'
  | 'feed'
  | 'flowCruise'
  | 'liquidVolume'
>;

interface Case {
  readonly what: string;
  /** Kind of the move, by its id. */
  readonly kind: string;
  readonly changes: Entries;
  readonly must: readonly (readonly [Read | 'current' | 'pumpCurrent', Way, why: string])[];
  /** Other than the demonstration job as it comes. */
  readonly from?: Entries;
}

const is = (text: string) => ({ is: text });
const hose = (bore: string): Entries =>
  Object.fromEntries(
    ['suction', 'delivery', 'transfer', 'back'].flatMap((run) => [
      [`hose.${run}.bore`, is(bore)],
      [`hose.${run}.fittingBore`, is(bore)],
    ]),
  );

const CASES: readonly Case[] = [
  {
    what: 'front exchanger that carries more per degree',
    kind: 'exchanger',
    changes: { 'frontExchanger.rating.heat': is('40000 Btu/h') },
    must: [
      ['chargeCruise', 'falls', 'the same heat leaves at a smaller difference to ambient'],
      ['chargePull', 'falls', 'the pull starts from colder liquid'],
      ['chargeAfter', 'falls', 'and recovery ends nearer to a colder balance'],
      ['tankCruise', 'falls', 'the whole loop stands nearer to ambient'],
      ['tankPeak', 'falls', 'the whole loop stands nearer to ambient'],
      ['boiling', 'rises', 'colder liquid, the same boiling point'],
      ['freezing', 'falls', 'colder liquid, the same freezing point'],
      ['suction', 'rises', 'vapour pressure falls with temperature'],
      ['feed', 'stays', 'the pump draws what it drew'],
    ],
  },
  {
    what: 'a second fan',
    kind: 'fans',
    // Two discs cover more of the face than the one that hangs there bare.
    from: { 'fans.coverage': is('70 %') },
    changes: { 'fans.count': is('2') },
    must: [
      ['chargeCruise', 'falls', 'more air through the shrouded face'],
      ['tankCruise', 'falls', 'more air through the shrouded face'],
      ['current', 'rises', 'two fans draw twice what one does'],
      ['pumpCurrent', 'stays', 'fans hang on a feed of their own'],
    ],
  },
  {
    what: 'a shroud over the whole face',
    kind: 'fans',
    changes: { 'fans.coverage': is('95 %') },
    must: [
      ['chargeCruise', 'falls', 'at little ram air the open part of the face has next to none'],
      ['current', 'stays', 'the same fan'],
    ],
  },
  {
    what: 'a wider way for the air of the road',
    kind: 'air',
    changes: { 'airPath.ramRecovery': is('30 %') },
    must: [['chargeCruise', 'falls', 'the road’s pressure drives more air through the core']],
  },
  {
    what: 'front exchanger ahead of the other cores',
    kind: 'order',
    changes: { 'airPath.stackPlace': is('behind') },
    must: [
      ['chargeCruise', 'falls', 'it meets ambient air, no longer the condenser’s warm air'],
      ['tankCruise', 'falls', 'it meets ambient air, no longer the condenser’s warm air'],
      ['chargePull', 'falls', 'the pull starts from colder liquid'],
    ],
  },
  {
    what: 'liquid to the front exchanger first',
    kind: 'plumbing',
    // A tank in a hot bay: with little heat of its own the charge hardly knows the order.
    from: { 'soak.reservoirConductance': is('12 W/K') },
    changes: { 'loop.liquidOrder': is('front-first') },
    must: [
      [
        'tankCruise',
        'rises',
        'it holds what leaves the charge cooler, not what leaves the exchanger',
      ],
      ['tankPeak', 'rises', 'the heat of the pull comes to it undiminished'],
      ['chargeCruise', 'falls', 'heat of pump and tank is given off before it meets the charge'],
      ['flowCruise', 'rises', 'the pump moves hotter, thinner liquid'],
      ['suction', 'falls', 'hotter liquid at the pump has more vapour pressure'],
      ['freezing', 'rises', 'hotter liquid leaves the tank'],
      ['liquidVolume', 'stays', 'the same parts hold it'],
    ],
  },
  {
    what: 'a pump that moves more at every head',
    kind: 'pump',
    changes: {
      'pump.curve': {
        is: [
          ['0 gpm', '15 ft'],
          ['6 gpm', '13.6 ft'],
          ['12 gpm', '10.2 ft'],
          ['18 gpm', '4.4 ft'],
          ['21 gpm', '0 ft'],
        ],
      },
    },
    must: [
      ['flowCruise', 'rises', 'a higher curve crosses the loop’s further out'],
      ['chargePull', 'falls', 'liquid warms less on its way through the charge cooler'],
      ['suction', 'falls', 'more flow, more loss in the same suction hose'],
    ],
  },
  {
    what: 'larger hoses',
    kind: 'hoses',
    changes: hose('0.75 in'),
    must: [
      ['flowCruise', 'rises', 'friction goes with the fifth power of the bore (Darcy-Weisbach)'],
      ['chargePull', 'falls', 'liquid warms less on its way through the charge cooler'],
      ['suction', 'rises', 'less loss before the pump'],
      ['liquidVolume', 'rises', 'wider hoses hold more'],
    ],
  },
  {
    what: 'pump feed brought up',
    kind: 'feed',
    changes: { 'pump.volts': is('13.2 V') },
    must: [
      ['flowCruise', 'rises', 'speed follows volts, flow follows speed (affinity laws)'],
      ['chargePull', 'falls', 'liquid warms less on its way through the charge cooler'],
      ['pumpCurrent', 'rises', 'power rises faster than volts'],
      ['feed', 'falls', 'the same fuse, more current'],
    ],
  },
  {
    what: 'a larger tank',
    kind: 'tank',
    changes: { 'reservoir.volume': is('5 gal'), 'reservoir.totalVolume': is('5.6 gal') },
    must: [
      ['chargeCruise', 'stays', 'a balance does not ask how much liquid there is'],
      ['tankCruise', 'stays', 'a balance does not ask how much liquid there is'],
      ['chargePull', 'falls', 'the same heat warms more liquid less'],
      ['tankPeak', 'falls', 'the same heat warms more liquid less'],
      ['liquidVolume', 'rises', 'that is the change'],
    ],
  },
  {
    what: 'ice in a tank of water',
    kind: 'ice',
    from: { 'coolant.kind': is('water'), 'coolant.share': is('0 %') },
    // Fits over the liquid: 0.4 gal of air space.
    changes: { 'events.ice': is('2.5 lb') },
    must: [
      [
        'tankPeak',
        'falls',
        'heat melts ice before it warms the liquid, and its water comes on top',
      ],
      ['chargePull', 'falls', 'the pull meets liquid that came a colder way'],
      ['chargeCruise', 'stays', 'a settled loop has no ice left'],
    ],
  },
  {
    what: 'less glycol',
    kind: 'mixture',
    changes: { 'coolant.share': is('30 %') },
    must: [
      ['freezing', 'falls', 'thinner mixtures freeze sooner'],
      ['flowCruise', 'rises', 'thinner mixtures are less viscous'],
      ['chargePull', 'falls', 'they carry more heat per degree, and more of it flows'],
    ],
  },
  {
    what: 'a charge cooler that carries more per degree',
    kind: 'cooler',
    changes: { 'chargeCooler.rating.heat': is('90000 Btu/h') },
    must: [['chargePull', 'falls', 'the charge air comes nearer to the liquid']],
  },
  {
    what: 'shielding from the engine’s heat',
    kind: 'shielding',
    changes: { 'soak.engineConductance': is('10 W/K') },
    must: [
      ['tankCruise', 'falls', 'less heat comes in'],
      ['chargeCruise', 'falls', 'less heat comes in'],
    ],
  },
  {
    what: 'a larger pulley: less boost, less power',
    kind: 'engine',
    changes: { 'duty.pull.manifold': is('7 psi'), 'duty.pull.power': is('540 hp') },
    must: [
      ['chargePull', 'falls', 'less compression heats less air less'],
      [
        'chargeCruise',
        'stays',
        'cruise runs on the bypass; its inlet loss alone follows full power',
      ],
    ],
  },
];

const READ = (side: Side) => {
  const a = assess(side);
  return { ...a, current: currentOf(a), pumpCurrent: pumpCurrentOf(a) };
};
/** Over the value: 0.004 K of a temperature, which no thermometer on a vehicle shows. */
const SAME = 1e-5;
/** Over the value: what is said to move must move by more than that. */
const MOVED = 1e-4;

describe.each(CASES)('$what', ({ kind, changes, must, from }) => {
  const demo = demoJob();
  const job: Job = { ...demo, candidate: null, aside: [], asFound: { ...demo.asFound, ...from } };
  const before = READ(evaluate(job).asFound);
  const after = READ(sideWith(job, { name: 'x', changes }));

  it('is a change of its kind', () => {
    for (const path of Object.keys(changes)) expect(kindOf(path)).toBe(kind);
  });
  it.each(must)('%s %s: %s', (result, way) => {
    const [a, b] = [before[result]!, after[result]!];
    expect(a).not.toBeNull();
    expect(b).not.toBeNull();
    const off = (b - a) / Math.max(1e-9, Math.abs(a));
    if (way === 'stays') expect(Math.abs(off)).toBeLessThan(SAME);
    else expect(way === 'rises' ? off : -off).toBeGreaterThan(MOVED);
  });
  it('asks for a new comparison', () => {
    expect(upgradesKey({ ...job, candidate: { name: 'x', changes } })).not.toBe(
      upgradesKey({ ...job, candidate: { name: 'x', changes: {} } }),
    );
  });
});

describe('kinds of change', () => {
  it('are all tried above', () => {
    const tried = new Set(CASES.map(({ kind }) => kind));
    expect(MOVE_KINDS.map(({ id }) => id).filter((id) => !tried.has(id))).toEqual([]);
  });
  it('ice in a mixture is refused, and why is told', () => {
    const side = sideWith(demoJob(), { name: 'ice', changes: { 'events.ice': is('2.5 lb') } });
    const a = assess(side);
    expect(a.driveProblem).toMatch(/plain water only/);
    expect(a).toMatchObject({ problem: null, chargePull: null, tankPeak: null });
    expect(a.chargeCruise).not.toBeNull();
  });
});

describe('the other order of the cores in the liquid', () => {
  const withEntries = (entries: Entries): Job => {
    const demo = demoJob();
    return { ...demo, asFound: { ...demo.asFound, ...entries } };
  };
  const plumbing = (job: Job) => movesOf(job).find(({ id }) => id === 'plumbing');

  it('is a move only where it is allowed, for what it costs', () => {
    expect(plumbing(demoJob())).toBeUndefined();
    const job = withEntries({ 'plan.liquidOrder': is('try'), 'plan.liquidOrderCost': is('$65') });
    expect(plumbing(job)).toMatchObject({ cost: 65, mass: 0 });
    expect(plumbing(job)!.changes).toEqual({ 'loop.liquidOrder': { is: 'front-first' } });
  });
  it('is the other one whichever it is now', () => {
    const job = withEntries({
      'plan.liquidOrder': is('try'),
      'loop.liquidOrder': is('front-first'),
    });
    expect(plumbing(job)!.changes).toEqual({ 'loop.liquidOrder': { is: 'cooler-first' } });
  });
  it('goes with the order in the air, and with it something limits', () => {
    const job = withEntries({ 'plan.liquidOrder': is('try'), 'plan.order': is('try') });
    const both = movesOf(job).filter(({ id }) => id === 'order' || id === 'plumbing');
    expect(both).toHaveLength(2);
    const side = sideWith(job, together(both));
    expect(side.loop).toMatchObject({
      liquidOrder: 'front-first',
      airPath: { stackPlace: 'behind' },
    });
    expect(limitsOf(side, 'cruise')!.part).not.toBeNull();
  });
});

describe('the other order of the cores', () => {
  const allowed = (entries: Entries): Job => {
    const demo = demoJob();
    return { ...demo, asFound: { ...demo.asFound, ...entries } };
  };
  const order = (job: Job) => movesOf(job).find(({ id }) => id === 'order');

  it('is a move only where it is allowed, and there are other cores', () => {
    expect(order(demoJob())).toBeUndefined();
    expect(order(allowed({ 'plan.order': is('try') }))).toMatchObject({ cost: 0, mass: 0 });
    const alone = {
      'plan.order': is('try'),
      'airPath.stackHeat': is('0 kW'),
      'airPath.stackLoss': { is: [['450 ft/min', '0 inH2O']] },
    };
    expect(order(allowed(alone))).toBeUndefined();
  });
  it('costs what is stated, and is the other one whichever it is now', () => {
    const job = allowed({ 'plan.order': is('try'), 'plan.orderCost': is('$120') });
    expect(order(job)!.cost).toBe(120);
    expect(order(job)!.changes).toEqual({ 'airPath.stackPlace': { is: 'behind' } });
    const behind = allowed({ 'plan.order': is('try'), 'airPath.stackPlace': is('behind') });
    expect(order(behind)!.changes).toEqual({ 'airPath.stackPlace': { is: 'in-front' } });
  });
  it('with it something limits, told as for any other', () => {
    const job = allowed({ 'plan.order': is('try') });
    const side = sideWith(job, { name: 'order', changes: order(job)!.changes });
    expect(limitsOf(side, 'cruise')!.part).not.toBeNull();
  });
});
