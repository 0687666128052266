/** Lines of the cores' losses and of the balance with the pump. */
import { balanceLine, formulaLine, type Formula, type Line } from '$lib/solver/formula';
import {
  coreLossPower,
  coreLossTwoPart,
  pumpSetHead,
  systemHeadSum,
} from '$lib/solver/hydraulics/formulas';
import { coreLoss, type HydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { starvedSetHead } from '$lib/solver/suction/formulas';
import { PART_WORDS } from './parts';

/** Charge cooler and front exchanger: loss from the rating, as a gauge on both ports reads it. */
export const coreLines = (loop: Loop, s: SteadySolution): Line[] =>
  (['chargeCooler', 'frontExchanger'] as const).map((id) => {
    const { law, rated, notesAt } = coreLoss(loop, id);
    const { flow: Q } = s.operating;
    const x = {
      Q,
      Q_r: law.flowRated,
      rho: s.liquid.density,
      rho_r: rated.rho,
      mu: s.liquid.viscosity,
      mu_r: rated.mu,
    };
    const words = {
      id: `loss-${id}`,
      statement: `Pressure lost in ${PART_WORDS[id]}`,
      why: 'Carried from its rating to this flow and this liquid; a gauge on both ports should read it.',
      notes: [RATED_NOTE, ...notesAt(Q)],
    };
    return law.form === 'power'
      ? formulaLine(coreLossPower, { ...x, dp_r: law.lossRated, n: law.n }, words)
      : formulaLine(
          coreLossTwoPart,
          { ...x, dp_1: law.linearRated, dp_2: law.quadraticRated },
          words,
        );
  });

const RATED_NOTE = {
  code: 'loss.rated-liquid',
  message:
    'Density and viscosity at the rating: of the liquid and the inlet temperature it was rated with.',
};

/** The flow at which the pump gives what the loop asks. */
export function operatingLine(loop: Loop, { pump }: HydraulicModel, s: SteadySolution): Line {
  const { flow, speedRatio, shares, notes, headLeft: x_h } = s.operating;
  const x = { n_s: pump.inSeries, n_p: pump.inParallel, Q: flow, s: speedRatio };
  const counted = loop.pump.cavitation === 'counted';
  const of = Object.fromEntries(shares.map((share) => [share.part, share]));
  return balanceLine(
    counted
      ? { formula: starvedSetHead(pump) as Formula, x: { ...x, x_h } }
      : { formula: pumpSetHead(pump) as Formula, x },
    {
      formula: systemHeadSum,
      x: {
        h_suction: of.suction!.head,
        h_delivery: of.delivery!.head,
        h_transfer: of.transfer!.head,
        h_back: of.back!.head,
        dp_charge: of.chargeCooler!.pressureDrop,
        dp_front: of.frontExchanger!.pressureDrop,
        rho: s.liquid.density,
      },
    },
    {
      id: 'operating-point',
      statement: 'The flow settles where the pump gives the head that the loop asks',
      why: 'The loop is closed: nothing is lifted for good, all of the head is lost on the way round.',
      unknown: { tex: 'Q', quantity: 'volumeFlow', name: 'flow', value: flow },
      method: 'Flow found by bracketed root finding (Brent).',
      notes: notes.filter((note) => note.code.startsWith('pump.')),
    },
  );
}
