/** Faults of both exchangers and of the air. Sizes and weights: common practice, no source. */
import { conductanceLeft, faceLeft } from './changes';
import { withReversedFan } from './reversedFan';
import type { Fault } from './types';

/** Speed by which air that comes round again has gone, for a stack that was not sealed, m/s. */
const FADE = 30;

export const AIR_FAULTS: readonly Fault[] = [
  {
    id: 'core-blocked-outside',
    name: 'Front exchanger blocked outside: dirt, bent fins, a plate in front',
    sign: 'Up at every speed and a little less drop across it; shine a light through the core.',
    weight: 1.5,
    severity: { name: 'face blocked', quantity: 'percent', from: 0.2, to: 0.85 },
    apply: ({ loop }, x) => faceLeft(loop, 1 - x),
  },
  {
    id: 'exchanger-small',
    name: 'Front exchanger smaller than described',
    sign: 'Repeats, settles in proportion to load; the effectiveness from the readings is that of a smaller core.',
    weight: 1,
    severity: { name: 'conductance missing', quantity: 'percent', from: 0.2, to: 0.75 },
    apply: ({ loop }, x) => ({
      ...loop,
      frontExchanger: conductanceLeft(loop.frontExchanger, 1 - x),
    }),
  },
  {
    id: 'fan-dead',
    name: 'Fan dead or slow',
    sign: 'Hot standing and fine at speed; the drop across the exchanger is next to nothing at idle.',
    weight: 1.5,
    severity: { name: 'fan speed lost', quantity: 'percent', from: 0.4, to: 1 },
    apply: ({ loop }, x) => ({
      ...loop,
      fans: { ...loop.fans, volts: loop.fans.volts * (1 - x) },
    }),
    side: (x) => ({ once: { paper: x > 0.8 ? 0 : 1 } }),
  },
  {
    id: 'fan-reversed',
    name: 'Fan turns backwards',
    sign: 'Hot air comes out of the grille when standing; no better at 20 to 40 mph, where fan and ram cancel (worst there behind a full shroud), and good at 60.',
    weight: 1,
    severity: { name: 'pressure left turning backwards', quantity: 'percent', from: 0.3, to: 0.75 },
    apply: ({ loop }, x, duty) => withReversedFan(loop, x, duty),
    side: () => ({ once: { paper: -1 } }),
  },
  {
    id: 'fan-misplaced',
    name: 'Fan on the wrong side of its shroud, or gaps round it',
    sign: 'The fan runs and moves air, but round the core and not through it: hot standing, and warm air at the face.',
    weight: 1,
    severity: { name: 'fan air that misses the core', quantity: 'percent', from: 0.3, to: 0.85 },
    apply: ({ loop }, x) => {
      const { airPath, fans } = loop;
      return {
        ...loop,
        // Missing air is a curve of less flow; the blades still stand in the way at speed.
        fans: {
          ...fans,
          curve: fans.curve.map((p) => ({
            flow: p.flow * (1 - x),
            pressure: p.pressure * (1 - x),
          })),
        },
        airPath: {
          ...airPath,
          recirculation: Math.min(0.7, airPath.recirculation + 0.3 * x),
        },
      };
    },
    side: (x) => ({ once: { paper: 1 - x } }),
  },
  {
    id: 'hot-face-air',
    name: 'Hot air comes round to the face again',
    sign: 'The same rise at all speeds; a thermometer at the core’s face reads well above ambient.',
    weight: 1,
    severity: { name: 'further share coming round', quantity: 'percent', from: 0.1, to: 0.5 },
    apply: ({ loop }, x) => {
      const { airPath } = loop;
      const recirculationFade = Math.max(FADE, airPath.recirculationFade);
      const recirculation = Math.min(0.7, airPath.recirculation + x);
      return { ...loop, airPath: { ...airPath, recirculation, recirculationFade } };
    },
  },
  {
    id: 'hot-intake',
    name: 'Compressor breathes hot bay air',
    sign: 'More heat in the liquid at every load; a thermometer ahead of the compressor tells.',
    weight: 0.8,
    severity: {
      name: 'further rise of the intake',
      quantity: 'temperatureDifference',
      from: 10,
      to: 50,
    },
    apply: ({ loop }, x, duty) => {
      const own = loop.duties[duty];
      const duties = { ...loop.duties, [duty]: { ...own, intakeRise: own.intakeRise + x } };
      return { ...loop, duties };
    },
  },
  {
    id: 'charge-cooler-fouled',
    name: 'Charge cooler fouled or bypassed',
    sign: 'The intake is well above the liquid while tank and flow are normal.',
    weight: 0.8,
    severity: { name: 'conductance missing', quantity: 'percent', from: 0.4, to: 0.95 },
    apply: ({ loop }, x) => ({ ...loop, chargeCooler: conductanceLeft(loop.chargeCooler, 1 - x) }),
  },
];
