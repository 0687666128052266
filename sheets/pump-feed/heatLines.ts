/** Lines of what gets hot: the worst joint, a relay's contact, the wire; and the wire that would do. */
import type { Side } from '$lib/job/evaluate';
import {
  contactCurrent,
  currentAsked,
  drawLaw,
  leastArea,
  voltsAtLimit,
} from '$lib/solver/feed/circuitFormulas';
import { relayResistance } from '$lib/solver/feed/circuit';
import { hottestJoint } from '$lib/solver/feed/dropAdvice';
import { jointHeatFromResistance, wireResistanceHot } from '$lib/solver/feed/formulas';
import { wireSettles, wireToAir } from '$lib/solver/feed/heatFormulas';
import { pumpCount } from '$lib/solver/feed/supply';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Running, Study } from './study';

export function heatLines(side: Side, study: Study, s: Running, R_20: number): Line[] {
  const lines: Line[] = [];
  const worst = study.walk && hottestJoint(study.walk);
  if (worst) {
    lines.push(
      formulaLine(
        jointHeatFromResistance,
        { I: s.current, R: worst.resistance },
        {
          id: 'joint-heat',
          statement: `Heat in the worst joint: ${worst.name}`,
          why: 'A few watts in a plug brown it; it then gets worse by itself.',
        },
      ),
    );
  }
  const { relays } = study.supply.circuit;
  const better = relays.reduce((a, b) => (b.resistance < a.resistance ? b : a), relays[0]!);
  if (relays.length === 2 && better.resistance > 0) {
    lines.push(
      formulaLine(
        contactCurrent,
        { I: s.current, R_r: relayResistance(relays), R_1: better.resistance },
        {
          id: 'contact-current',
          statement: `Current through the better contact (${better.name})`,
          why: 'Contacts share by their conductance, not evenly: the better one works for both.',
        },
      ),
    );
  }
  return [...lines, ...wireHeatLines(side, study, s, R_20)];
}

function wireHeatLines(
  { values }: Side,
  { supply, wireHeat }: Study,
  s: Running,
  R_20: number,
): Line[] {
  const L = supply.circuit.wire.lengthOneWay;
  if (!wireHeat?.settles || !(L > 0)) return [];
  const T_a = values['feed.wire.airAround']!.si!;
  const G = formulaLine(
    wireToAir,
    { D: values['feed.wire.outside']!.si!, L },
    {
      id: 'wire-to-air',
      statement: 'Heat the wire gives off per degree, in still air',
      why: 'Wire in a loom or against a hose gives off less, and runs hotter than this says.',
    },
  );
  const R_a = formulaLine(
    wireResistanceHot,
    { R_20, T: T_a },
    {
      id: 'wire-in-air',
      statement: 'Resistance of the wire at the temperature of its air',
      why: 'A hot bay alone costs volts, before any current flows.',
    },
  );
  return [
    G,
    R_a,
    formulaLine(
      wireSettles,
      { T_a, I: s.current, R_a: R_a.value, G: G.value, R_20 },
      {
        id: 'wire-temperature',
        statement: 'Temperature at which the wire settles by its own current',
        why: 'A single wire in still air, its rise good to 40 %; taped into a loom it runs hotter.',
      },
    ),
  ];
}

/** The wire that keeps the drop allowed. */
export function adviceLines(side: Side, { supply, wire, supplied }: Study, R_c: number): Line[] {
  if (!wire || !supplied.ok) return [];
  const { pump } = side.loop;
  const U_max = side.values['feed.dropLimit']!.si!;
  const { draw } = supply;
  const law = drawLaw(draw, pump.motor);
  const V_p = formulaLine(
    voltsAtLimit,
    { V_s: supplied.value.source, U_max },
    {
      id: 'volts-at-limit',
      statement: 'Volts at the pump with just the drop allowed',
      why: 'The mark to hold the meter against when the new wire is in.',
    },
  );
  const I = formulaLine(
    currentAsked(draw, law),
    {
      n: pumpCount(pump),
      f: wire.loadShare,
      P_r: pump.electricPower,
      V_r: pump.ratedVolts,
      V_p: V_p.value,
    },
    {
      id: 'current-at-limit',
      statement: 'Current of the pump then',
      why: 'A better feed draws more: fuse and relay must stand it.',
    },
  );
  if (wire.leastArea === null) return [V_p, I];
  const { lengthOneWay: L, temperature: T } = supply.circuit.wire;
  return [
    V_p,
    I,
    formulaLine(
      leastArea,
      { L, T, U_max, I: I.value, R_c },
      {
        id: 'least-area',
        statement: 'Least copper that keeps the drop, with these joints',
        why: 'Take the next size above it. Better joints allow thinner wire.',
      },
    ),
  ];
}
