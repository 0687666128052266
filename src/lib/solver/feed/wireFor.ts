/** Which wire would do: the pump on the feed with other wire, and the thinnest that keeps a drop. */
import type { Pump } from '../loop/types';
import { spaced } from '../numerics/spaced';
import { ampacity, AMPACITY_RANGE } from './ampacity';
import { feedParts } from './circuit';
import { copperTemperatureFactor, COPPER_RESISTIVITY_20 } from './copper';
import { copperArea, wireArea, type WireSize } from './gauge';
import { ISO_6722_LARGEST_RESISTANCE } from './iso6722Table';
import { suppliedPump, type PumpSupply, type SuppliedPump } from './supply';

/** Flow over free flow at the speed that these volts give; see {@link suppliedPump}. */
export type FlowShare = (volts: number) => number;

/** The same feed with other wire. */
export const withWire = (supply: PumpSupply, size: WireSize): PumpSupply => ({
  ...supply,
  circuit: { ...supply.circuit, wire: { ...supply.circuit.wire, size } },
});

/** Gauges sold for feeds, thin to thick: even numbers, and every size from 1/0 up (common practice). */
export const SOLD_GAUGES = [22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3] as const;

/** Protection, relay and connectors, ohm. */
export const jointResistanceOf = ({ circuit }: PumpSupply): number =>
  feedParts(circuit).reduce((sum, p) => sum + (p.kind === 'wire' ? 0 : p.resistance), 0);

/** What keeps the drop over the whole feed at a limit. */
export interface WireFor {
  /** At the pump when just that drop is lost, V. */
  readonly volts: number;
  /** Of the pump then, A, and its {@link SuppliedPump} load share. */
  readonly current: number;
  readonly loadShare: number;
  /** Area of copper that loses just that, m²; null: the joints alone lose more. */
  readonly leastArea: number | null;
  /** Thinnest gauge sold, and metric nominal size, with at least that; null: none. */
  readonly gauge: Extract<WireSize, { by: 'awg' }> | null;
  readonly metric: Extract<WireSize, { by: 'area' }> | null;
}

/**
 * Thinnest wire that keeps the drop from battery to pump at `dropMax`, the pump drawing what it draws
 * at the volts that are then left. Null when it would not run at those volts.
 *
 * @formula A = 2 * L * rho * (1 + alpha * (T - 293.15)) / (dropMax / I - R_joints)
 * @source Ohm's law; copper as in {@link resistancePerMetre}
 */
export function wireFor(
  pump: Pump,
  supply: PumpSupply,
  dropMax: number,
  flowShare: FlowShare,
): WireFor | null {
  // A feed that loses just the limit is a source weaker by it and no feed at all.
  const { source, wire } = supply.circuit;
  const ideal: PumpSupply = {
    ...supply,
    circuit: {
      source: {
        engineRunning: source.engineRunning - dropMax,
        engineOff: source.engineOff - dropMax,
        running: source.running,
      },
      protection: { ...supply.circuit.protection, resistance: 0 },
      wire: { ...wire, lengthOneWay: 0 },
      relays: [],
      connectors: [],
    },
  };
  if (!((source.running ? source.engineRunning : source.engineOff) - dropMax >= 1)) return null;
  const left = suppliedPump(pump, ideal, flowShare);
  if (left.status === 'stopped') return null;
  const forWire = dropMax / left.current - jointResistanceOf(supply);
  const { volts, current, loadShare } = left;
  if (!(forWire > 0)) {
    return { volts, current, loadShare, leastArea: null, gauge: null, metric: null };
  }
  const least =
    (2 *
      wire.lengthOneWay *
      COPPER_RESISTIVITY_20 *
      copperTemperatureFactor({ T: wire.temperature })) /
    forWire;
  const awg = SOLD_GAUGES.find((n) => wireArea({ awg: n }) >= least);
  const nominal = ISO_6722_LARGEST_RESISTANCE.find(([mm2]) => mm2 * 1e-6 >= least);
  return {
    volts,
    current,
    loadShare,
    leastArea: least,
    gauge: awg === undefined ? null : { by: 'awg', awg },
    metric: nominal ? { by: 'area', area: nominal[0] * 1e-6 } : null,
  };
}

/** Areas worth drawing, m²: from thin feed wire to 8 AWG, or to the thickest in question. */
const DRAWN = [0.4e-6, 9e-6] as const;

/** Thinnest wire drawn, m²; thinner is told in words. */
export const THINNEST_DRAWN = DRAWN[0];

/** Areas for a curve that shows all of `inQuestion`, closer together where wire is thin. */
export const areasToDraw = (inQuestion: readonly number[]): number[] =>
  spaced(Math.log(DRAWN[0]), Math.log(Math.max(DRAWN[1], ...inQuestion)), 48).map(Math.exp);

/** The pump on the feed, wire by wire. */
export interface WireSample {
  /** Of copper, m². */
  readonly area: number;
  readonly supplied: SuppliedPump;
}

/** The pump on the feed with each of these areas of copper. */
export const alongWire = (
  pump: Pump,
  supply: PumpSupply,
  areas: readonly number[],
  flowShare: FlowShare,
): WireSample[] =>
  areas.map((area) => ({
    area,
    supplied: suppliedPump(pump, withWire(supply, { by: 'area', area }), flowShare),
  }));

/**
 * Current the wire may carry where it lies, and the table's own value; null for wire thinner than the
 * table's thinnest, which is no wire for a feed.
 */
export function wireCarries(
  size: WireSize,
  ambient: number,
): { readonly table: number; readonly here: number } | null {
  if (copperArea(size) < AMPACITY_RANGE.area[0]) return null;
  return { table: ampacity(size, AMPACITY_TABLE_AIR), here: ampacity(size, ambient) };
}

/** Air for which the table is printed, K. */
const AMPACITY_TABLE_AIR = 303.15;
