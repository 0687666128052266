/** Switches that must move before the next stretch is run: what the last one left untrue. */
import { ICE_POINT } from '../../fluids/ice';
import { NODE } from '../network';
import type { Mode } from './mode';
import type { Switches } from './switches';
import { BOILING, type Outcome, type WatchFacts } from './watch';

/** A liquid this close to its boiling point with heat to spare boils, K: rounding of a sharp event. */
const AT_BOILING = 1e-9;

/** How the drive begins: ice or none, fans as their sensor says. Nothing of it is an event. */
export function firstSettings(s: Switches, { request }: WatchFacts, y: Float64Array): void {
  s.melting = (request.ice?.mass ?? 0) > 0 && y[NODE.reservoir]! < ICE_POINT;
  if (request.thermostat) {
    const { sensor, onAt } = request.thermostat;
    s.fansOn = y[sensor === 'frontOut' ? NODE.frontLiquid : NODE.reservoir]! >= onAt;
  }
}

/**
 * Move one switch that contradicts the state under the mode's forcing, and say what happened; null when
 * none does. Called until it says null: each switch depends on those before it.
 */
export function settleOne(
  s: Switches,
  mode: Mode,
  facts: WatchFacts,
  y: Float64Array,
): Outcome | null {
  const { request, layout, net, boilingPoint, capLiftsAt, capGauge } = facts;
  if (layout.breaker >= 0 && s.closed && y[layout.breaker]! >= 0) {
    const rates = new Float64Array(layout.dimension);
    net.rates(mode, y, rates);
    if (rates[layout.breaker]! > 0) {
      s.closed = false;
      return { kind: 'breaker-trips', value: mode.current };
    }
  }
  if (request.boiling) {
    for (const { part, of, heat } of BOILING) {
      const reading = net.read(mode, y);
      const warms = reading[heat] > 0;
      const T = part === 'reservoir' ? reading.reservoir : y[NODE[part]]!;
      if (s.boils[of] ? !warms : warms && T >= boilingPoint - AT_BOILING) {
        s.boils[of] = !s.boils[of];
        return { kind: s.boils[of] ? 'boiling-begins' : 'boiling-ends', value: boilingPoint, part };
      }
    }
  }
  if (!s.capLifted && net.reservoir(mode, y) >= capLiftsAt) {
    s.capLifted = true;
    return { kind: 'cap-lifts', value: capGauge };
  }
  return null;
}
