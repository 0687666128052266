import {
  fanLaws,
  hydraulicPower,
  pumpAffinity,
  pumpLoss,
  shaftPower,
} from '$lib/solver/hydraulics/affinity';
import { parseQuantity, type Quantity } from '$lib/units';
import { Unsupported } from '../given';
import type { Adapter } from '../harness';
import { pumpSet, quadraticHead } from './curves';

const QUANTITY: Record<string, Quantity> = {
  'volume-flow': 'volumeFlow',
  pressure: 'gaugePressure',
  'pressure-drop': 'pressureDrop',
  head: 'head',
  length: 'length',
  power: 'power',
  heat: 'heat',
  mass: 'mass',
  'mass-flow': 'massFlow',
  temperature: 'temperature',
  volume: 'volume',
  area: 'area',
  velocity: 'velocity',
  'air-flow': 'airFlow',
};

/**
 * The reference says exactly which unit, `US gal/min`, `Btu_IT/h`, `inH2O (conventional)`; people, and
 * the units read here, say it shorter.
 */
const plain = (unit: string) => unit.replace(/\(.*\)|_IT|^US /g, '').trim();

export const pumpAffinityAdapters: Record<string, Adapter> = {
  'pump-affinity': (given) => ({
    ...pumpAffinity(
      { Q: given.number('Q'), H: given.number('H'), P: given.number('P') },
      given.number('speed_ratio'),
    ),
  }),
  'pump-curve-at-speed': (given) => {
    const pump = pumpSet(quadraticHead(given), { speedRatio: given.number('speed_ratio') });
    return { H: pump.head(given.number('Q')) };
  },
  'fan-laws': (given) => ({
    ...fanLaws(
      { Q: given.number('Q'), dp: given.number('dp'), P: given.number('P') },
      { speedRatio: given.number('speed_ratio'), densityRatio: given.numberOr('density_ratio', 1) },
    ),
  }),
  'pump-power': (given) => {
    const point = { rho: given.number('rho'), Q: given.number('Q'), H: given.number('H') };
    const P_hydraulic = hydraulicPower(point);
    const shaft = { P_hydraulic, efficiency: given.number('efficiency') };
    return { P_hydraulic, P_shaft: shaftPower(shaft), heat_to_liquid_max: pumpLoss(shaft) };
  },
  unit: (given) => {
    const quantity = given.oneOf('quantity', QUANTITY);
    const typed = `${given.number('value')} ${plain(given.text('unit'))}`;
    // In air, a pressure of inches of water; the reference calls every pressure just that.
    const tries: Quantity[] = quantity === 'gaugePressure' ? [quantity, 'airPressure'] : [quantity];
    for (const kind of tries) {
      const read = parseQuantity(typed, kind);
      if (read.ok) return { si: read.si };
    }
    throw new Unsupported(`"${typed}" as a ${given.text('quantity')}`);
  },
};
