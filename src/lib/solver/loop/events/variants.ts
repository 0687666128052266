/** What drives the loop in each mode: pump moving or standing, fans on or off, duty by duty. */
import { airModel } from '../../airside/face';
import { forcingOf, type Forcing } from '../forcing';
import { prepared as prepare, prepareLoop, type PreparedLoop } from '../prepare';
import type { AirSide, Loop, Segment } from '../types';
import type { EventRequest } from './types';

export interface ModeForcing {
  readonly base: Forcing;
  /** Kelvin at the charge cooler's air inlet for each kelvin at the compressor's. */
  readonly inletGain: number;
}

export interface Variants {
  /** The loop with its pump at work and its fans on. */
  readonly prepared: PreparedLoop;
  forcing(segment: Segment, moves: boolean, fansOn: boolean): ModeForcing;
}

/**
 * Modes of a loop, each worked out when first asked for. Flow, charge air and air side are shared by
 * the modes in which they are the same.
 */
export function variantsOf(given: Loop | PreparedLoop, { cavitation }: EventRequest): Variants {
  const described = 'hydraulics' in given ? given.loop : given;
  const { pump } = described;
  const same = cavitation === undefined || cavitation === (pump.cavitation ?? 'ignored');
  const prepared = same
    ? prepare(given)
    : prepareLoop({ ...described, pump: { ...pump, cavitation } });
  const { loop } = prepared;

  const standing = once(() => ({
    ...prepareLoop({ ...loop, feed: null, pump: { ...loop.pump, volts: 0 } }),
    chargeAt: prepared.chargeAt,
    airAt: prepared.airAt,
  }));
  const airFansOff = once(() => {
    const air = airModel({ ...loop, fans: { ...loop.fans, volts: 0 } });
    const known = new Map<number, AirSide>();
    return (speed: number) => {
      const side = known.get(speed) ?? air.at(speed);
      known.set(speed, side);
      return side;
    };
  });
  const mode = (moves: boolean, fansOn: boolean) =>
    once(() => {
      const ready = moves ? prepared : standing();
      const { coldest, hottest } = ready;
      // Without flow hardly anything follows the liquid's temperature: one piece mostly does.
      const piece = moves ? undefined : hottest - coldest;
      return forcingOf(fansOn ? ready : { ...ready, airAt: airFansOff() }, piece);
    });
  const modes = [mode(false, false), mode(false, true), mode(true, false), mode(true, true)];

  return {
    prepared,
    forcing(segment, moves, fansOn) {
      const base = modes[(moves ? 2 : 0) + (fansOn ? 1 : 0)]!()(segment);
      return { base, inletGain: inletGain(prepared, base) };
    },
  };
}

/** Compression multiplies the inlet's absolute temperature, bypass or not, by one ratio. */
function inletGain({ loop, chargeAt }: PreparedLoop, { duty, statedHeat }: Forcing): number {
  const state = statedHeat === null ? chargeAt(duty) : null;
  if (!state) return 0;
  return state.compressorOutlet / (loop.site.ambientTemperature + duty.intakeRise);
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
}
