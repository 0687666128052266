/** How much heat each part of the loop holds per kelvin. */
import { hoseVolume } from '../hydraulics/hose';
import { isFrontFirst } from './order';
import { prepared as prepare, type PreparedLoop } from './prepare';
import type { Hose, Loop, ThermalMass } from './types';

/** Capacities of the five nodes of the transient, J/K. */
export interface NodeCapacities {
  readonly reservoir: number;
  readonly chargeLiquid: number;
  readonly chargeMetal: number;
  readonly frontLiquid: number;
  readonly frontMetal: number;
}

/**
 * Heat capacity by part, J/K, with the liquid's density and specific heat at `temperature`
 * (K; default ambient). The product of the two moves by about 3 % over a loop's span.
 */
export function thermalMass(
  loop: Loop | PreparedLoop,
  temperature?: number,
): readonly ThermalMass[] {
  const { prepared, perVolume } = volumetric(loop, temperature);
  const { reservoir, chargeCooler, frontExchanger, hoses } = prepared.loop;
  const liquid = (part: ThermalMass['part'], liquidVolume: number): ThermalMass => ({
    part,
    capacity: perVolume * liquidVolume,
    liquidVolume,
  });
  const metal = (part: ThermalMass['part'], capacity: number): ThermalMass => ({
    part,
    capacity,
    liquidVolume: 0,
  });
  return [
    liquid('reservoirLiquid', reservoir.liquidVolume),
    metal('reservoirMetal', reservoir.metalCapacity),
    liquid('chargeLiquid', chargeCooler.liquidVolume),
    metal('chargeMetal', chargeCooler.metalCapacity),
    liquid('frontLiquid', frontExchanger.liquidVolume),
    metal('frontMetal', frontExchanger.metalCapacity),
    liquid(
      'hoses',
      Object.values(hoses).reduce((sum, hose: Hose) => sum + hoseVolume(hose), 0),
    ),
  ];
}

/** Heat capacity of the whole loop, J/K. */
export function totalCapacity(parts: readonly ThermalMass[]): number {
  return parts.reduce((sum, { capacity }) => sum + capacity, 0);
}

/** Least capacity of a node, J/K: a part described without liquid or metal still has a mouthful of each. */
const LEAST = 1;

/**
 * The same capacities by node. The liquid of a hose counts with the part it leads to: suction and
 * delivery with the first core, transfer with the second, back with the reservoir.
 */
export function nodeCapacities(loop: Loop | PreparedLoop, temperature?: number): NodeCapacities {
  const { prepared, perVolume } = volumetric(loop, temperature);
  const { reservoir, chargeCooler, frontExchanger, hoses } = prepared.loop;
  const toFirst = hoseVolume(hoses.suction) + hoseVolume(hoses.delivery);
  const toSecond = hoseVolume(hoses.transfer);
  const [toFront, toCooler] = isFrontFirst(prepared.loop)
    ? [toFirst, toSecond]
    : [toSecond, toFirst];
  const least = (capacity: number) => Math.max(LEAST, capacity);
  return {
    reservoir: least(
      perVolume * (reservoir.liquidVolume + hoseVolume(hoses.back)) + reservoir.metalCapacity,
    ),
    chargeLiquid: least(perVolume * (chargeCooler.liquidVolume + toCooler)),
    chargeMetal: least(chargeCooler.metalCapacity),
    frontLiquid: least(perVolume * (frontExchanger.liquidVolume + toFront)),
    frontMetal: least(frontExchanger.metalCapacity),
  };
}

function volumetric(loop: Loop | PreparedLoop, temperature?: number) {
  const prepared = prepare(loop);
  const { rho, cp } = prepared.liquidAt(temperature ?? prepared.loop.site.ambientTemperature);
  return { prepared, perVolume: rho * cp };
}
