/** Logs of a loop whose numbers are known; every number here is invented. */
import { seededRandom } from '$lib/solver/numerics/random';
import { simulator } from '$lib/solver/loop/identify/simulate';
import type {
  ChannelName,
  Channels,
  Drive,
  Parameters,
  RingModel,
} from '$lib/solver/loop/identify/types';

export const RING: RingModel = {
  order: ['charge', 'reservoir', 'pump', 'front'],
  charge: { by: 'heat' },
  front: { by: 'outlet' },
};

export const TRUE: Parameters = {
  frontUA: 650,
  chargeUA: 900,
  frontShare: 0.4,
  chargeShare: 0.7,
  capacityRate: 2800,
  flowScale: 1,
  heatScale: 1,
  pumpHeat: 100,
  soakHeat: 0,
  chargeCapacity: 7000,
  reservoirCapacity: 38000,
  pumpCapacity: 9000,
  frontCapacity: 12000,
  chargeStart: 305,
  reservoirStart: 305,
  pumpStart: 305,
  frontStart: 305,
};

/** Road, a pull, road, two pulls, idle: one row a second. */
export function drive(seconds = 600): Drive {
  const t = Float64Array.from({ length: seconds + 1 }, (_, k) => k);
  const pull = (s: number) => (s > 60 && s < 90) || (s > 240 && s < 265) || (s > 330 && s < 355);
  return {
    t,
    between: 'held',
    ambient: t.map(() => 303),
    heat: t.map((s) => (pull(s) ? 28000 : s < 450 ? 4000 : 500)),
  };
}

/** What `channels` would read, with normal noise. */
export function logOf(
  names: readonly ChannelName[],
  {
    seed,
    noise = 0.2,
    of = drive(),
    model = RING,
    parameters = TRUE,
  }: {
    seed: number;
    noise?: number;
    of?: Drive;
    model?: RingModel;
    parameters?: Parameters;
  },
): Channels {
  const random = seededRandom(seed);
  const exact = simulator(model, of)(parameters);
  return Object.fromEntries(
    names.map((name) => [name, exact[name].map((T) => T + noise * random.normal())]),
  );
}
