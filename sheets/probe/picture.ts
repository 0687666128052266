/** What the drawn circuit says: values of its parts, the network as it will be soldered. */
import type { Network } from '$lib/solver/instruments/probe/trim/network';
import type { Placement } from '$lib/solver/instruments/probe/trim/trims';
import type { Study } from './study';

export interface CircuitPicture {
  /** V */
  readonly supply: number;
  /** Bias resistor that is there, ohm. */
  readonly bias: number;
  /** Null where nothing is to be soldered. */
  readonly trim: { readonly network: Network; readonly placement: Placement } | null;
  /** The network is of resistors that nobody said are there. */
  readonly example: boolean;
  /** Bias as it works then, ohm. */
  readonly working: number;
  /** Probe in ice and at the boil, ohm. */
  readonly ice: number;
  readonly boil: number;
  /** Bits of the converter. */
  readonly bits: number;
}

export function circuitPicture({ job, trim, stockAssumed }: Study): CircuitPicture {
  const { divider, probe } = job.setup;
  return {
    supply: divider.supply,
    bias: divider.bias,
    trim: trim && { network: trim.network, placement: trim.placement },
    example: stockAssumed,
    working: trim?.bias ?? divider.bias,
    ice: job.ice?.ohms ?? probe.resistance(273.15),
    boil: job.boil?.ohms ?? probe.resistance(job.boilPoint),
    bits: divider.bits,
  };
}
