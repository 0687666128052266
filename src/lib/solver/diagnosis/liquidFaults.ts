/** Faults of supply, pump and liquid passages. Sizes and weights: common practice, no source. */
import { atVolts, headScaled, squeezed, tubesLeft } from './changes';
import type { Fault } from './types';

export const LIQUID_FAULTS: readonly Fault[] = [
  {
    id: 'supply-drop',
    name: 'Volts lost on the way to the pump',
    sign: 'Volts at the pump’s plug, amps and flow are low in step, and worse when warm: measure the drop across each joint under load.',
    weight: 1.5,
    severity: { name: 'volts lost', quantity: 'percent', from: 0.06, to: 0.55 },
    apply: ({ loop, volts }, x) => atVolts(loop, volts * (1 - x)),
  },
  {
    id: 'breaker-cycling',
    name: 'Breaker cycling',
    sign: 'Flow, volts and amps come and go with square edges; a slow meter shows their mean, so volts and amps fall by one share. Log volts on both sides of the breaker.',
    weight: 1,
    severity: { name: 'share of the time off', quantity: 'percent', from: 0.15, to: 0.85 },
    // Mean flow is flow times time on; a brushed pump at that share of its volts moves very nearly that.
    apply: ({ loop, volts }, off) => {
      const turned = atVolts(loop, volts * (1 - off));
      const { pump } = turned;
      const held = pump.motor === 'held-speed' ? { ratedVolts: volts } : {};
      return { ...turned, pump: { ...pump, ...held, motor: 'brushed' } };
    },
    side: (off, { volts, amps }) => ({
      fixed: { volts: volts * (1 - off), amps: amps * (1 - off) },
    }),
  },
  {
    id: 'no-supply',
    name: 'No volts at the pump: fuse, breaker or relay open',
    sign: 'The tank stays flat and cool while the intake climbs; no volts, no amps, no flow.',
    weight: 1,
    severity: null,
    apply: ({ loop }) => atVolts(loop, 0),
  },
  {
    id: 'pump-rubbing',
    name: 'Pump rubbing or seized',
    sign: 'Amps are well above normal while flow is low; a seized pump trips its breaker.',
    weight: 0.7,
    severity: { name: 'speed lost', quantity: 'percent', from: 0.1, to: 0.96 },
    apply: ({ loop, volts }, x) => atVolts(loop, volts * (1 - x)),
    // Standing, a small motor takes about two and a half times its running current before it trips.
    side: (x, { volts, amps }) => ({
      fixed: { volts: volts * (1 - 0.05 * x), amps: amps * (1.15 + 1.35 * x) },
    }),
  },
  {
    id: 'air-bound',
    name: 'Air in the pump',
    sign: 'Volts are normal, amps 30 to 60 % low, flow near nothing, little pressure at the outlet; it starts after a fill or hard cornering.',
    weight: 1.5,
    severity: { name: 'head lost', quantity: 'percent', from: 0.6, to: 0.9995 },
    apply: ({ loop }, x) => headScaled(loop, 1 - x),
    side: (x) => ({ factor: { amps: 1 - 0.25 * x } }),
  },
  {
    id: 'cavitation',
    name: 'Cavitation: cap holds nothing and the suction side is short',
    sign: 'Flow and amps fall only when hot; with the cap holding pressure, or the tank cooled, the symptom goes.',
    weight: 0.6,
    severity: { name: 'suction head needed', quantity: 'head', from: 3, to: 8 },
    // Cold and open to the air there are about 10 m: up to 8 m the pump is well until it gets hot.
    apply: ({ loop }, x) => {
      const { npshCurve: _points, ...pump } = loop.pump;
      return {
        ...loop,
        reservoir: { ...loop.reservoir, capGauge: 0 },
        pump: { ...pump, cavitation: 'counted', npshRequired: x },
      };
    },
  },
  {
    id: 'hose-collapsed',
    name: 'Hose collapsed or kinked after the pump',
    sign: 'Flow and amps are low at full volts while the pressure at the pump’s outlet is high; feel along the hose when hot.',
    weight: 1,
    severity: { name: 'bore lost', quantity: 'percent', from: 0.15, to: 0.75 },
    apply: ({ loop }, x) => squeezed(loop, 'transfer', 1 - x),
  },
  {
    id: 'core-blocked-inside',
    name: 'Front exchanger blocked inside',
    sign: 'Low flow at full volts, high pressure at the pump’s outlet, and a large drop across the exchanger.',
    weight: 1,
    severity: { name: 'tubes blocked', quantity: 'percent', from: 0.25, to: 0.9 },
    apply: ({ loop }, x) => ({ ...loop, frontExchanger: tubesLeft(loop.frontExchanger, 1 - x) }),
  },
  {
    id: 'short-circuit',
    name: 'Return goes straight to the tank’s outlet',
    sign: 'Settled temperatures are normal but it soaks as if the tank were tiny: time a warm-up for the effective volume.',
    weight: 1,
    severity: { name: 'share of the return', quantity: 'percent', from: 0.4, to: 0.95 },
    apply: ({ loop }, x) => ({ ...loop, reservoir: { ...loop.reservoir, shortCircuit: x } }),
    side: (x) => ({ once: { volume: 1 - x } }),
  },
];
