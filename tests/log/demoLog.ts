/**
 * The invented log of the demonstration job, made by following the loop through a drive and adding what
 * instruments add: noise, two wild readings, a probe that stands still for a while. Its drive: traffic,
 * cruise, pull, recovery; then the pump's flow falls, and its volts a few seconds later.
 */
import { seededRandom } from '$lib/solver/numerics/random';
import { prepareLoop } from '$lib/solver/loop/prepare';
import type { Loop, Segment } from '$lib/solver/loop/types';
import { settledState } from '$lib/solver/loop/warmUp';
import { followed } from './followed';

const RATE = 2;
/** The drive up to the fault, and after it, s. */
const DRIVE: readonly Segment[] = [
  { duty: 'traffic', duration: 210 },
  { duty: 'cruise', duration: 240 },
  { duty: 'pull', duration: 25 },
  { duty: 'cruise', duration: 185 },
  { duty: 'pull', duration: 15 },
  { duty: 'cruise', duration: 135 },
];
const AFTER: readonly Segment[] = [{ duty: 'cruise', duration: 120 }];
/** What is left of the pump's speed, and how long the volts hold after it. */
const SPEED_LEFT = 0.68;
const VOLTS_LATER = 5;
const VOLTS = [10.9, 9.7] as const;
const AMPS = [5.2, 7.4] as const;

const NOISE = {
  temperature: 0.25,
  air: 0.8,
  flow: 0.06,
  volts: 0.04,
  amps: 0.06,
  maf: 0.25,
  speed: 0.4,
};

const F = (kelvin: number) => (kelvin - 273.15) * 1.8 + 32;
const GPM = 6.30901964e-5;
const LB_PER_MIN = 0.45359237 / 60;
const MPH = 0.44704;

const HEADINGS = [
  'Time (s)',
  'Vehicle speed (mph)',
  'Ambient temp (°F)',
  'Charge temp before cooler (°F)',
  'IAT (°F)',
  'MAF (lb/min)',
  'Front exchanger in (°F)',
  'Front exchanger out (°F)',
  'Reservoir temp (°F)',
  'Coolant flow (gpm)',
  'Pump volts (V)',
  'Pump current (A)',
];

/** Where the vehicle that was "logged" differs from its description: dirtier, and less liquid takes part. */
export const LOGGED_CLEANLINESS = 0.6;
export const LOGGED_VOLUME = 2.2 * 3.785411784e-3;

export function demoLog(described: Loop): string {
  const loop: Loop = {
    ...described,
    frontExchanger: { ...described.frontExchanger, cleanliness: LOGGED_CLEANLINESS },
    reservoir: { ...described.reservoir, liquidVolume: LOGGED_VOLUME },
  };
  const random = seededRandom(20_411);
  const noise = (size: number) => size * random.normal();
  const sound = prepareLoop(loop);
  const { pump } = loop;
  const curve = pump.curve.map(({ flow, head }) => ({
    flow: flow * SPEED_LEFT,
    head: head * SPEED_LEFT ** 2,
  }));
  const weak = prepareLoop({ ...loop, pump: { ...pump, curve } });
  const first = followed(sound, DRIVE, { start: settledState(sound, 'traffic'), rate: RATE });
  const second = followed(weak, AFTER, { start: first.end, rate: RATE });
  const fault = first.rows.length / RATE;

  let stuck = 0;
  const rows = [...first.rows, ...second.rows.map((row) => ({ ...row, t: row.t + fault }))].map(
    (row, k) => {
      const { t } = row;
      const dropped = t >= fault + VOLTS_LATER ? 1 : 0;
      let front = F(row.frontOut) + noise(NOISE.temperature);
      if (t >= 560 && t < 585) front = stuck ||= front;
      let reservoir = F(row.reservoir) + noise(NOISE.temperature);
      if (k === 377 || k === 1104) reservoir = 302;
      return [
        t.toFixed(1),
        (loop.duties[row.duty].vehicleSpeed / MPH + noise(NOISE.speed)).toFixed(1),
        (F(loop.site.ambientTemperature) + noise(NOISE.temperature)).toFixed(1),
        (F(row.chargeAirIn) + noise(NOISE.air)).toFixed(1),
        (F(row.chargeOut) + noise(NOISE.air)).toFixed(1),
        (row.chargeAirFlow / LB_PER_MIN + noise(NOISE.maf)).toFixed(2),
        (F(row.frontIn) + noise(NOISE.temperature)).toFixed(1),
        front.toFixed(1),
        reservoir.toFixed(1),
        (row.flow / GPM + noise(NOISE.flow)).toFixed(2),
        (VOLTS[dropped] + noise(NOISE.volts)).toFixed(2),
        (AMPS[t >= fault ? 1 : 0] + noise(NOISE.amps)).toFixed(2),
      ].join(',');
    },
  );
  return [
    '# Invented log for demonstration; nothing in it was measured on a vehicle.',
    HEADINGS.join(','),
    ...rows,
    '',
  ].join('\r\n');
}
