/** Readings that lie: the loop is as described, one instrument is not. Sizes: common practice. */
import type { DutyChannel, Fault, FaultId } from './types';

/** Widest error of a probe, either way, K. */
const PROBE = 20;

const probe = (id: FaultId, channel: DutyChannel, where: string): Fault => ({
  id,
  name: `${where} probe reads wrong`,
  sign: `Only this reading is off, by one amount in every duty; after a night’s soak it disagrees with the others.`,
  weight: 0.6,
  severity: {
    name: 'reads too high by',
    quantity: 'temperatureDifference',
    from: -PROBE,
    to: PROBE,
  },
  apply: ({ loop }) => loop,
  side: (x) => ({ bias: { [channel]: x }, once: { soak: Math.abs(x) } }),
});

export const INSTRUMENT_FAULTS: readonly Fault[] = [
  probe('reservoir-probe', 'reservoir', 'Reservoir'),
  probe('front-probe', 'frontOut', 'Front exchanger outlet'),
  probe('charge-probe', 'charge', 'Charge air'),
  {
    id: 'flow-meter',
    name: 'Flow meter reads wrong',
    sign: 'Flow is off by one factor while volts, amps and temperatures are normal: a bucket tells.',
    weight: 1,
    severity: { name: 'shown over true', quantity: 'ratio', from: 0.4, to: 1.7 },
    apply: ({ loop }) => loop,
    side: (x) => ({ factor: { flow: x } }),
  },
];
