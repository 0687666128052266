import {
  NUSSELT_LAMINAR,
  nusseltDittusBoelter,
  nusseltGnielinski,
  nusseltHausen,
  nusseltSiederTate,
} from '$lib/solver/cores/convection';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const flow = (given: Given) => ({ Re: given.number('Re'), Pr: given.number('Pr') });

const entry = (given: Given) => ({
  ...flow(given),
  D: given.number('D'),
  L: given.number('L'),
});

export const internalConvectionAdapters: Record<string, Adapter> = {
  gnielinski: (given) => ({ Nu: nusseltGnielinski({ ...flow(given), f: given.number('f') }) }),
  'dittus-boelter': (given) => {
    const way = { heated: 'heated', cooled: 'cooled' } as const;
    return { Nu: nusseltDittusBoelter({ ...flow(given), liquidIs: given.oneOf('fluid_is', way) }) };
  },
  'laminar-developed': (given) => ({ Nu: given.oneOf('wall', NUSSELT_LAMINAR) }),
  'laminar-entry-hausen': (given) => ({ Nu: nusseltHausen(entry(given)) }),
  'laminar-entry-sieder-tate': (given) => ({
    Nu: nusseltSiederTate({
      ...entry(given),
      viscosityRatio: given.numberOr('viscosity_ratio', 1),
    }),
  }),
};
