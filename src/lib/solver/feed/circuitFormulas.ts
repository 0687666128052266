/** Formulas of the feed as a whole: its parts put together, the pump on it, the wire that would do. */
import { defineFormula, type Formula, type NamedFunction, type Term } from '../formula';
import { SOURCES } from '../sources';
import { COPPER_COEFFICIENT_20, COPPER_REFERENCE_TEMPERATURE } from './copper';
import type { PumpDraw } from './supply';

const volts = (tex: string, name: string): Term => ({ tex, quantity: 'voltage', name });
const ohms = (tex: string, name: string): Term => ({ tex, quantity: 'resistance', name });

/** Two contacts side by side. */
export const contactsTogether = defineFormula({
  id: 'feed.contacts-together',
  expr: 'R_1 * R_2 / (R_1 + R_2)',
  gives: ohms('R_r', 'both contacts together'),
  terms: { R_1: ohms('R_1', 'contact of relay 1'), R_2: ohms('R_2', 'contact of relay 2') },
  source: SOURCES.ohmKirchhoff,
});

/** What the first of two contacts carries. */
export const contactCurrent = defineFormula({
  id: 'feed.contact-current',
  expr: 'I * R_r / R_1',
  gives: { tex: 'I_1', quantity: 'current', name: 'through the better contact' },
  terms: {
    I: { tex: 'I', quantity: 'current', name: 'current of the pump' },
    R_r: ohms('R_r', 'both contacts together'),
    R_1: ohms('R_1', 'the better contact'),
  },
  source: SOURCES.ohmKirchhoff,
});

const sums = new Map<number, Formula>();

/** Sum of all joints: protection, relay and connectors, `count` of them. */
export function jointsTogether(count: number): Formula {
  let sum = sums.get(count);
  if (!sum) {
    const keys = Array.from({ length: count }, (_, i) => `R_${i + 1}`);
    sum = defineFormula({
      id: 'feed.joints-together',
      expr: keys.join(' + '),
      gives: ohms('R_c', 'all joints'),
      terms: Object.fromEntries(
        keys.map((key, i) => [
          key,
          ohms(`R_{c${i + 1}}`, `joint ${i + 1}, in order of the current`),
        ]),
      ),
      source: SOURCES.ohmKirchhoff,
    });
    sums.set(count, sum);
  }
  return sum;
}

/** The whole feed. */
export const feedTogether = defineFormula({
  id: 'feed.together',
  expr: 'R_w + R_c',
  gives: ohms('R', 'whole feed'),
  terms: { R_w: ohms('R_w', 'wire out and back'), R_c: ohms('R_c', 'all joints') },
  source: SOURCES.ohmKirchhoff,
});

/** Left side of the balance: volts the battery has over those on the plug. */
export const voltsToSpare = defineFormula({
  id: 'feed.volts-to-spare',
  expr: 'V_s - V_p',
  gives: volts('U', 'left for the feed'),
  terms: {
    V_s: volts('V_s', 'volts at the battery posts'),
    V_p: volts('V_p', 'volts at the pump'),
  },
  source: SOURCES.ohmKirchhoff,
});

const DRAW_TERMS = {
  n: { tex: 'n', quantity: 'count', name: 'pumps on this feed' },
  f: { tex: 'f', quantity: 'ratio', name: 'share of the load at this flow; 1: not counted' },
  P_r: { tex: 'P_r', quantity: 'electricPower', name: 'rated input of one pump' },
  V_r: volts('V_r', 'volts at which the pump is rated'),
  V_p: volts('V_p', 'volts at the pump'),
} as const satisfies Record<string, Term>;
const { V_p: _pumpVolts, ...RATED_TERMS } = DRAW_TERMS;

/** Current a pump draws, by the law chosen. */
const LAWS = {
  'speed-cubed': { expr: 'n * f * P_r / V_r * (V_p / V_r)^2', terms: DRAW_TERMS },
  'one-current': { expr: 'n * f * P_r / V_r', terms: RATED_TERMS },
  'one-power': { expr: 'n * f * P_r / V_p', terms: (({ V_r: _, ...rest }) => rest)(DRAW_TERMS) },
} as const;
export type DrawLaw = keyof typeof LAWS | 'measured';

/** The law in words of its own: what {@link PumpDraw} means for a brushed motor or a controlled one. */
export function drawLaw(draw: PumpDraw, motor: 'brushed' | 'held-speed'): DrawLaw {
  switch (draw.kind) {
    case 'pump-law':
      return motor === 'brushed' ? 'speed-cubed' : 'one-power';
    case 'constant-torque':
      return 'one-current';
    case 'constant-power':
      return 'one-power';
    case 'table':
      return 'measured';
  }
}

const measured = (draw: PumpDraw): Record<string, NamedFunction> => ({
  I_m: {
    tex: 'I_m',
    says: 'Current read from the measured table at these volts, straight between its points.',
    takes: ['voltage'],
    gives: 'current',
    call: (v) => (draw.kind === 'table' ? currentAt(draw.points, v!) : NaN),
  },
});

/** Current of a table at `v`, straight between its points and level beyond its ends. */
function currentAt(points: Extract<PumpDraw, { kind: 'table' }>['points'], v: number): number {
  const i = points.findIndex((p) => p.volts >= v);
  if (i === 0) return points[0]!.current;
  if (i < 0) return points.at(-1)!.current;
  const [a, b] = [points[i - 1]!, points[i]!];
  return a.current + ((v - a.volts) / (b.volts - a.volts)) * (b.current - a.current);
}

const asked = (draw: PumpDraw, law: DrawLaw) =>
  law === 'measured'
    ? {
        expr: 'I_m(V_p)',
        terms: { V_p: DRAW_TERMS.V_p } as Readonly<Record<string, Term>>,
        functions: measured(draw),
        source: SOURCES.definition,
      }
    : {
        expr: LAWS[law].expr as string,
        terms: LAWS[law].terms as Readonly<Record<string, Term>>,
        source: law === 'speed-cubed' ? SOURCES.affinity : SOURCES.definition,
      };

/** Current the pump asks at the volts on its plug. */
export function currentAsked(draw: PumpDraw, law: DrawLaw): Formula {
  return defineFormula({
    id: `feed.current-${law}`,
    gives: { tex: 'I', quantity: 'current', name: 'current of the pump' },
    ...asked(draw, law),
  });
}

/** Right side of the balance: what the feed loses at the current the pump asks. */
export function dropAsked(draw: PumpDraw, law: DrawLaw): Formula {
  const { expr, terms, ...rest } = asked(draw, law);
  return defineFormula({
    id: `feed.drop-${law}`,
    expr: `R * ${expr}`,
    gives: volts('U', 'lost in the feed'),
    terms: { R: ohms('R', 'whole feed'), ...terms },
    ...rest,
  });
}

/** Load of a pump whose power falls with its flow. */
export const loadShareFormula = defineFormula({
  id: 'feed.load-share',
  expr: 'k + (1 - k) * Q / Q_0',
  gives: { tex: 'f', quantity: 'ratio', name: 'share of the load at this flow' },
  terms: {
    k: { tex: 'k', quantity: 'percent', name: 'power shut off over power at free flow' },
    Q: { tex: 'Q', quantity: 'volumeFlow', name: 'flow' },
    Q_0: { tex: 'Q_0', quantity: 'volumeFlow', name: 'free flow at this speed' },
  },
  source: SOURCES.commonPractice,
});

/** Electrical input from a meter's two readings. */
export const electricalInput = defineFormula({
  id: 'feed.electrical-input',
  expr: 'V_p * I',
  gives: { tex: 'P', quantity: 'electricPower', name: 'electrical input' },
  terms: {
    V_p: volts('V_p', 'volts at the pump'),
    I: { tex: 'I', quantity: 'current', name: 'current of the pump' },
  },
  source: SOURCES.definition,
});

/** Flow that the wiring costs. */
export const flowLost = defineFormula({
  id: 'feed.flow-lost',
  expr: 'Q_s - Q',
  gives: { tex: '\\Delta Q', quantity: 'volumeFlow', name: 'flow lost to the wiring' },
  terms: {
    Q_s: { tex: 'Q_s', quantity: 'volumeFlow', name: 'flow at the battery’s volts' },
    Q: { tex: 'Q', quantity: 'volumeFlow', name: 'flow behind this feed' },
  },
  source: SOURCES.definition,
});

/** Volts at the pump when just the drop allowed is lost. */
export const voltsAtLimit = defineFormula({
  id: 'feed.volts-at-limit',
  expr: 'V_s - U_max',
  gives: volts('V_p', 'volts at the pump with that drop'),
  terms: {
    V_s: volts('V_s', 'volts at the battery posts'),
    U_max: volts('U_{max}', 'drop allowed'),
  },
  source: SOURCES.ohmKirchhoff,
});

/** Least area of copper that keeps a drop over the whole feed. */
export const leastArea = defineFormula({
  id: 'feed.least-area',
  expr: 'A_u * R_u * (2 * L / L_u) * (1 + (T - T_20) / theta) / (U_max / I - R_c)',
  gives: { tex: 'A_{min}', quantity: 'wireArea', name: 'least area of copper' },
  terms: {
    A_u: { tex: 'A_u', quantity: 'wireArea', name: 'one square millimetre', fixed: 1e-6 },
    R_u: {
      tex: 'R_u',
      quantity: 'resistance',
      name: 'one metre of one square millimetre of copper at 20 °C: 1/58 ohm',
      fixed: 1 / 58,
    },
    L: { tex: 'L', quantity: 'length', name: 'length one way' },
    L_u: { tex: 'L_u', quantity: 'length', name: 'one metre', fixed: 1 },
    T: { tex: 'T', quantity: 'temperature', name: 'temperature of the copper' },
    T_20: {
      tex: 'T_{20}',
      quantity: 'temperature',
      name: 'reference temperature',
      fixed: COPPER_REFERENCE_TEMPERATURE,
    },
    theta: {
      tex: '\\theta',
      quantity: 'temperatureDifference',
      name: 'rise that doubles the resistance',
      fixed: 1 / COPPER_COEFFICIENT_20,
    },
    U_max: volts('U_{max}', 'drop allowed'),
    I: { tex: 'I', quantity: 'current', name: 'current with that drop' },
    R_c: ohms('R_c', 'all joints'),
  },
  source: SOURCES.iec60028,
});
