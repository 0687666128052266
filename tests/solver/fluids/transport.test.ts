import { describe, expect, it } from 'vitest';
import { conductivityIapws, viscosityIapws } from '$lib/solver/fluids/transport';
import { printedTo } from './printed';

// Source: IAPWS R12-08, Table 4 (critical enhancement set to 1); µPa s.
describe('viscosity of water agrees with every digit printed', () => {
  it.each([
    [298.15, 998, '889.735100'],
    [298.15, 1200, '1437.649467'],
    [373.15, 1000, '307.883622'],
    [433.15, 1, '14.538324'],
    [433.15, 1000, '217.685358'],
    [873.15, 1, '32.619287'],
    [873.15, 100, '35.802262'],
    [873.15, 600, '77.430195'],
    [1173.15, 1, '44.217245'],
    [1173.15, 100, '47.640433'],
    [1173.15, 400, '64.154608'],
  ])('at %d K and %d kg/m³', (T, rho, printed) => {
    const { value, within } = printedTo(printed);
    expect(Math.abs(1e6 * viscosityIapws(rho, T) - value)).toBeLessThanOrEqual(within);
  });
});

// Source: IAPWS R15-11, Table 4 (critical enhancement set to 0); mW/(m K).
describe('conductivity of water agrees with every digit printed', () => {
  it.each([
    [298.15, 0, '18.4341883'],
    [298.15, 998, '607.712868'],
    [298.15, 1200, '799.038144'],
    [873.15, 0, '79.1034659'],
  ])('at %d K and %d kg/m³', (T, rho, printed) => {
    const { value, within } = printedTo(printed);
    expect(Math.abs(1e3 * conductivityIapws(rho, T) - value)).toBeLessThanOrEqual(within);
  });
});
