import {
  EXIT_K,
  contractionK,
  craneBendK,
  craneTurbulentFriction,
  cvToK,
  entranceK,
  expansionK,
  kvToK,
  type Entrance,
} from '$lib/solver/hydraulics/fittings';
import { headOf } from '$lib/solver/hydraulics/affinity';
import { flowArea, hoseLoss, reynolds, velocity } from '$lib/solver/hydraulics/formulas';
import { frictionColebrook, frictionLaminar, type PipeFlow } from '$lib/solver/hydraulics/friction';
import { hosePressureDrop } from '$lib/solver/hydraulics/hose';
import { Unsupported, type Given } from '../given';
import type { Adapter } from '../harness';

const radians = (given: Given) => (given.number('angle_deg') * Math.PI) / 180;

const boreChange = (given: Given) => ({
  small: given.number('D_small'),
  large: given.number('D_large'),
  angle: given.has('angle_deg') ? radians(given) : Math.PI,
});

function entrance(given: Given): Entrance {
  const kind = given.oneOf('kind', {
    'flush-sharp': 'flush-sharp',
    'inward-projecting': 'inward-projecting',
    rounded: 'rounded',
  } as const);
  return kind === 'rounded' ? { kind, radiusOverBore: given.number('radius_over_D') } : { kind };
}

interface Line {
  readonly D: number;
  readonly L: number;
  readonly roughness: number;
  readonly K: number;
  readonly rho: number;
  readonly mu: number;
  readonly Q: number;
}

/** Darcy-Weisbach, line by line as the sheets show it, with a friction law of choice. */
const withFriction =
  (law: (flow: PipeFlow) => number) =>
  ({ D, L, roughness, K, rho, mu, Q }: Line) => {
    const V = velocity.value({ Q, A: flowArea.value({ D }) });
    const Re = reynolds.value({ rho, V, D, mu });
    const f = law({ Re, relativeRoughness: roughness / D });
    return { V, Re, f, dp: hoseLoss.value({ f, L, D, K, rho, V }) };
  };

/** The law the loop uses goes the way the loop goes. */
function asHose({ D, L, roughness, K, rho, mu, Q }: Line) {
  const hose = { bore: D, length: L, roughness, bends: 0, bendK: 0, otherK: K, fittingBore: 0 };
  const drop = hosePressureDrop(hose, Q, { rho, mu });
  return { V: drop.velocity, Re: drop.reynolds, f: drop.friction, dp: drop.pressureDrop };
}

const LINE = {
  laminar: withFriction(frictionLaminar),
  colebrook: withFriction(frictionColebrook),
  'churchill-1977': asHose,
};

export const pipePressureDropAdapters: Record<string, Adapter> = {
  'entrance-crane': (given) => ({ K: entranceK(entrance(given)) }),
  exit: () => ({ K: EXIT_K }),
  'crane-turbulent-friction': (given) => {
    given.constant('roughness', 4.57e-5);
    return { f: craneTurbulentFriction(given.number('D')) };
  },
  'bend-crane': (given) => {
    given.setAside('D', 'it enters through fT, which is given');
    if (given.number('angle_deg') !== 90) throw new Unsupported('a bend of another angle than 90°');
    return {
      K: craneBendK({
        radiusOverBore: given.number('bend_radius_over_D'),
        frictionTurbulent: given.number('fT'),
      }),
    };
  },
  'contraction-crane': (given) => ({ K: contractionK(boreChange(given)) }),
  'expansion-crane': (given) => ({ K: expansionK(boreChange(given)) }),
  'cv-to-k': (given) => {
    given.constant('rho', 999);
    return { K: cvToK({ Cv: given.number('Cv'), bore: given.number('D') }) };
  },
  'kv-to-k': (given) => {
    given.constant('rho', 1000);
    return { K: kvToK({ Kv: given.number('Kv'), bore: given.number('D') }) };
  },
  'line-pressure-drop': (given) => {
    const line = {
      D: given.number('D'),
      L: given.number('L'),
      roughness: given.number('roughness'),
      K: given.number('K_sum'),
      rho: given.number('rho'),
      mu: given.number('mu'),
      Q: given.number('Q'),
    };
    const drop = given.oneOf('friction', LINE)(line);
    return { ...drop, head: headOf({ dp: drop.dp, rho: line.rho }) };
  },
};
