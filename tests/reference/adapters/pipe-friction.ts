import {
  frictionChurchill,
  frictionColebrook,
  frictionFullyRough,
  frictionLaminar,
} from '$lib/solver/hydraulics/friction';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const flow = (given: Given) => ({
  Re: given.number('Re'),
  relativeRoughness: given.number('relative_roughness'),
});

export const pipeFrictionAdapters: Record<string, Adapter> = {
  laminar: (given) => ({ f: frictionLaminar({ Re: given.number('Re') }) }),
  colebrook: (given) => ({ f: frictionColebrook(flow(given)) }),
  'churchill-1977': (given) => ({ f: frictionChurchill(flow(given)) }),
  'fully-rough': (given) => ({
    f: frictionFullyRough({ relativeRoughness: given.number('relative_roughness') }),
  }),
};
