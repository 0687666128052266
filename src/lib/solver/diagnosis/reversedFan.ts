/** A fan that turns the wrong way, as a loop without one that gives the same air through the face. */
import { airCp } from '../air/air';
import { airModel } from '../airside/face';
import { STANDARD_AIR_DENSITY } from '../airside/fan';
import { coveredShare, stackHeatOnFace } from '../airside/overlap';
import { brent } from '../numerics/root';
import type { Loop } from '../loop/types';
import type { SettledDuty } from './types';

/** Slower than this through the shroud counts as a standstill, m/s. */
const STILL = 1e-3;
/** Of the bay's rise above ambient, what the air has that a reversed fan draws from behind; our own statement. */
const DRAWN_FROM_BAY = 0.5;

/**
 * The loop as it behaves with its fans reversed.
 *
 * Reversed blades push forward with the share `strength` of their pressure. Standing, they blow bay air
 * out through the core; as the vehicle gathers speed ram and fan cancel, and only beyond does the air
 * turn round. Behind the shroud the net pressure |ram − strength · fan| drives the core's own loss; the
 * fan of the loop returned is a stand-in that gives just that speed, and where the fan wins the bay's
 * heat is put into the air. The open part of the face is left as it is.
 *
 * @param strength - share of the fan's pressure left when it turns backwards, about a half
 * @source pressure balance on the face; the share is common practice, no source
 */
export function withReversedFan(loop: Loop, strength: number, duty: SettledDuty): Loop {
  const { fans, airPath, site, frontExchanger } = loop;
  if (!(fans.count > 0 && fans.volts > 0)) return loop;
  const model = airModel(loop);
  const { vehicleSpeed, bayRise } = loop.duties[duty];
  const ram = model.ram(vehicleSpeed);
  const shutOff = strength * model.fan(0);
  const area = frontExchanger.width * frontExchanger.height * fans.coverage;
  const perFan = (v: number) => (v * area) / fans.count;
  const backwards = shutOff > ram;
  const surplus = (v: number) =>
    backwards
      ? strength * model.fan(v) - ram - model.resisting(v)
      : ram - shutOff - model.resisting(v);
  const start = surplus(STILL);
  let top = 1;
  while (surplus(top) > 0 && top < 100) top *= 2;
  const v = start > 0 ? brent(surplus, STILL, top, { xtol: 1e-6 }).x : STILL;
  const stood = standIn(loop, model.resisting(v) - ram, perFan(v), model.density);
  if (!backwards) return { ...loop, fans: stood };
  const drawn = DRAWN_FROM_BAY * bayRise;
  const blown = model.density * v * area * airCp(site.ambientTemperature) * drawn;
  return {
    ...loop,
    fans: stood,
    airPath: withBlown(airPath, blown),
  };
}

/** The bay's heat in the air that meets the face; where nothing stands there, as the only heat. */
function withBlown(airPath: Loop['airPath'], blown: number): Loop['airPath'] {
  const others = coveredShare(airPath) > 0 ? airPath : { ...airPath, ...NOTHING_THERE };
  return { ...others, stackPlace: 'in-front', stackHeat: stackHeatOnFace(airPath) + blown };
}

const NOTHING_THERE = { stackLoss: { points: [], exponent: 2 }, stackShare: 1 };

/** Fans that, at the flow `q` of each, add `lift` (Pa; negative: take it away). */
function standIn({ fans }: Loop, lift: number, q: number, density: number): Loop['fans'] {
  if (lift > 0) {
    const pressure = (lift * STANDARD_AIR_DENSITY) / density;
    const curve = [
      { flow: 0, pressure: 2 * pressure },
      { flow: q, pressure },
      { flow: 2 * q, pressure: 0 },
    ];
    return { ...fans, curve, volts: fans.ratedVolts };
  }
  const swept = (Math.PI / 4) * fans.diameter * fans.diameter;
  const velocity = q / swept;
  return { ...fans, volts: 0, drivenLoss: -lift / (0.5 * density * velocity * velocity) };
}
