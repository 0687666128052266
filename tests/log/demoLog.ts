/**
 * The invented log of the demonstration job, made by following the loop through a drive and adding what
 * instruments add: noise, two wild readings, a probe that stands still for a while. Its drive: traffic,
 * cruise, pull, recovery; then the pump's flow falls, and its volts a few seconds later.
 */
import { seededRandom } from '$lib/solver/numerics/random';
import { prepareLoop } from '$lib/solver/loop/prepare';
import type { DutyId, Loop, Segment } from '$lib/solver/loop/types';
import { settledState, warmUp } from '$lib/solver/loop/warmUp';

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
  const common = { chargeLimit: 400, recoveryBand: 2, points: 4000 };
  const first = warmUp(sound, {
    ...common,
    schedule: DRIVE,
    start: settledState(sound, 'traffic'),
  });
  const second = warmUp(weak, { ...common, schedule: AFTER, start: first.end });
  const fault = first.endTime;

  const rows: string[] = [];
  let stuck = 0;
  const end = fault + second.endTime;
  for (let k = 0; k / RATE < end; k++) {
    const t = k / RATE;
    const run = t < fault ? first : second;
    const own = t < fault ? t : t - fault;
    const { history } = run;
    const at = (x: Float64Array) => between(history.t, x, own);
    const duty = loop.duties[dutyAt(t < fault ? DRIVE : AFTER, own)];
    const charge = sound.chargeAt(duty)!;
    const dropped = t >= fault + VOLTS_LATER ? 1 : 0;
    let front = F(at(history.frontLiquid)) + noise(NOISE.temperature);
    if (t >= 560 && t < 585) front = stuck ||= front;
    let reservoir = F(at(history.reservoir)) + noise(NOISE.temperature);
    if (k === 377 || k === 1104) reservoir = 302;
    rows.push(
      [
        t.toFixed(1),
        (duty.vehicleSpeed / MPH + noise(NOISE.speed)).toFixed(1),
        (F(loop.site.ambientTemperature) + noise(NOISE.temperature)).toFixed(1),
        (F(charge.compressorOutlet) + noise(NOISE.air)).toFixed(1),
        (F(at(history.chargeOut)) + noise(NOISE.air)).toFixed(1),
        (charge.massFlow / LB_PER_MIN + noise(NOISE.maf)).toFixed(2),
        (F(at(history.chargeLiquid)) + noise(NOISE.temperature)).toFixed(1),
        front.toFixed(1),
        reservoir.toFixed(1),
        (at(history.flow) / GPM + noise(NOISE.flow)).toFixed(2),
        (VOLTS[dropped] + noise(NOISE.volts)).toFixed(2),
        (AMPS[t >= fault ? 1 : 0] + noise(NOISE.amps)).toFixed(2),
      ].join(','),
    );
  }
  return [
    '# Invented log for demonstration; nothing in it was measured on a vehicle.',
    HEADINGS.join(','),
    ...rows,
    '',
  ].join('\r\n');
}

function dutyAt(schedule: readonly Segment[], t: number): DutyId {
  let end = 0;
  for (const { duty, duration } of schedule) {
    end += duration;
    if (t < end) return duty;
  }
  return schedule.at(-1)!.duty;
}

/** Straight line between the history's points; at an edge what comes after it. */
function between(t: Float64Array, x: Float64Array, at: number): number {
  let i = t.findIndex((time) => time > at);
  if (i < 0) return x.at(-1)!;
  if (i === 0) i = 1;
  const share = (at - t[i - 1]!) / (t[i]! - t[i - 1]!);
  return x[i - 1]! + share * (x[i]! - x[i - 1]!);
}
