/**
 * Questions of the trade asked backwards. The answers were computed apart from this program, by hand or
 * with a short script, from the handbook laws named at each; here the program is given the result and must
 * find the input. Tolerance: how the answer prints, and what the case itself says it is good for.
 */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { invert } from '$lib/job/invert/invert';
import { triedInput } from '$lib/job/invert/invertInputs';
import { emptyJob, type Job, type Typed } from '$lib/job/types';

const set = (job: Job, texts: Readonly<Record<string, Typed>>): Job =>
  Object.entries(texts).reduce((current, [path, text]) => {
    const edited = applyEdit(current, 'asFound', path, text);
    if (edited.problem !== undefined) throw new Error(`${path}: ${edited.problem}`);
    return edited.job;
  }, job);

const ask = (job: Job, texts: Readonly<Record<string, string>>) => {
  const asked = set(
    job,
    Object.fromEntries(Object.entries(texts).map(([key, text]) => [`whatItTakes.${key}`, text])),
  );
  return invert(evaluate(asked).asFound);
};

const nothing = (run: string) => ({
  [`hose.${run}.length`]: '0 ft',
  [`hose.${run}.bends`]: '0',
  [`hose.${run}.otherK`]: '0',
});

/**
 * Hose 20 ft of 3/4 in, K 7.5 in all, roughness 1.5 µm; core 3 psi and front exchanger 1.5 psi at 8 gpm,
 * exponent 1.8; 50 % ethylene glycol by volume at 120 °F. Pump H = 16 ft (V/13.5)² - 16 ft (Q/11 gpm)².
 * Source: Darcy-Weisbach with Churchill 1977, affinity laws; computed apart.
 */
const loop = set(emptyJob('US'), {
  // The liquid of the case is at 120 °F, in the loop and where its cores were rated.
  'site.ambient': '116.5 °F',
  'frontExchanger.rating.heat': '20000 Btu/h',
  'frontExchanger.rating.liquidInlet': '120 °F',
  'chargeCooler.rating.liquidInlet': '120 °F',
  'pump.curve': Array.from({ length: 12 }, (_, i) => [`${i} gpm`, `${16 - (16 * i * i) / 121} ft`]),
  'hose.delivery.length': '20 ft',
  'hose.delivery.bends': '8',
  'hose.delivery.bendK': '0.75',
  'hose.delivery.otherK': '1.5',
  ...nothing('suction'),
  ...nothing('transfer'),
  ...nothing('back'),
  'chargeCooler.liquidLoss': [['8 gpm', '3 psi']],
  'frontExchanger.liquidLoss': [['8 gpm', '1.5 psi']],
  'chargeCooler.liquidLossExponent': '1.8',
  'frontExchanger.liquidLossExponent': '1.8',
});

it('the liquid of the loop is that of the case', () => {
  const { cruise } = evaluate(loop).asFound.steady;
  const T = cruise.ok ? cruise.value.liquid.temperature : NaN;
  expect(Math.abs(T - (120 + 459.67) / 1.8)).toBeLessThan(1);
});

describe('pump: which volts give the flow', () => {
  // Flows printed to 0.01 gpm; the case is good to ±2 %, and so then are volts (flow about as volts).
  it.each([
    ['5.38 gpm', 12],
    ['4.90 gpm', 11],
    ['3.96 gpm', 9],
    ['6.10 gpm', 13.5],
  ])('%s: %f V', (flow, volts) => {
    const { verdict, value } = ask(loop, {
      input: 'pump.volts',
      result: 'flow',
      kind: 'exactly',
      flow,
    });
    expect(verdict).toBe('found');
    expect(Math.abs(value! / volts - 1)).toBeLessThan(0.02);
  });
});

describe('hose: which bore gives the flow of the same pump', () => {
  // −10, −12, −16 by hose bore: 5.11, 6.10, 6.98 gpm.
  it.each([
    ['5.11 gpm', 10],
    ['6.10 gpm', 12],
    ['6.98 gpm', 16],
  ])('%s: −%i', (flow, dash) => {
    const { value, sold } = ask(set(loop, { 'pump.volts': '13.5 V' }), {
      input: 'hose.delivery.bore',
      result: 'flow',
      kind: 'exactly',
      flow,
    });
    // ±2 % of flow: near −16 a hose hardly counts, and the same share of flow is a wider band of bores.
    const bore = (dash / 16) * 0.0254;
    const at = sold.find(({ name }) => name === `−${dash}`)!;
    expect(at.x).toBeCloseTo(bore, 9);
    expect(Math.abs(at.y! / (parseFloat(flow) * 6.30902e-5) - 1)).toBeLessThan(0.02);
    expect(Math.abs(value! / bore - 1)).toBeLessThan(dash === 16 ? 0.15 : 0.04);
  });
});

/**
 * Two fans 650 cfm and 0.60 inH2O each, straight line, full shroud, 24 × 12 in; core 2.75 in deep,
 * 3.0 v + 1.7 v² Pa per inch. Fan laws and a quadratic core, computed apart: two 914 cfm, one 558 cfm.
 */
describe('fans: how many for the air', () => {
  const pa = (v: number) => `${2.75 * (3 * v + 1.7 * v * v)} Pa`;
  const face = set(emptyJob('US'), {
    'fans.curve': [
      ['0 cfm', '0.60 inH2O'],
      ['650 cfm', '0 inH2O'],
    ],
    'fans.coverage': '100 %',
    'frontExchanger.width': '24 in',
    'frontExchanger.height': '12 in',
    'frontExchanger.airLoss': [1, 2, 3].map((v) => [`${v} m/s`, pa(v)]),
    'airPath.stackLoss': [['450 ft/min', '0 Pa']],
    'airPath.ramRecovery': '0 %',
    'duty.traffic.speed': '0 mph',
  });
  const air = (target: string) =>
    ask(face, {
      input: 'fans.count',
      result: 'air',
      kind: 'at-least',
      duty: 'traffic',
      air: target,
    });

  it.each([
    ['540 cfm', 1],
    ['575 cfm', 2],
    ['895 cfm', 2],
  ])('%s: %i', (target, count) => {
    const found = air(target);
    const all = found.looks.filter(({ y }) => y >= found.level!);
    // Fewest that do: the next smaller one is short.
    expect(Math.min(...all.map(({ x }) => x))).toBe(count);
    expect(found.looks.find(({ x }) => x === count - 1)!.y).toBeLessThan(found.level!);
  });

  it('the air itself: 558 and 914 cfm, to 2 %', () => {
    const cfm = (count: number) =>
      air('900 cfm').looks.find(({ x }) => x === count)!.y / 4.71947e-4;
    expect(Math.abs(cfm(1) / 558 - 1)).toBeLessThan(0.02);
    expect(Math.abs(cfm(2) / 914 - 1)).toBeLessThan(0.02);
  });
});

/**
 * 13.8 V, 18 A whatever the volts, 14 ft each way, copper at 60 °C; breaker 0.10, relay 0.20, plugs 0.25 V.
 * Ohm's law with ASTM B258 sizes and IEC 60028 copper, computed apart: 14 AWG 1.47 V, 12 AWG 0.93 V,
 * 10 AWG 0.58 V in the wire.
 */
describe('wire: which gauge keeps the drop', () => {
  const ohms = (volts: number) => `${volts / 18} ohm`;
  const fed = set(emptyJob('US'), {
    'pump.voltsFrom': 'feed',
    'pump.electricPower': `${18 * 13.5} W`,
    'feed.draw': 'constant-torque',
    'feed.sourceRunning': '13.8 V',
    'feed.wire.lengthOneWay': '14 ft',
    'feed.wire.copperTemperature': '60 °C',
    'feed.protection.ohms': ohms(0.1),
    'feed.relay1.contact': ohms(0.2),
    'feed.connectors': [['feed-plug', ohms(0.25), '', '']],
  });
  const JOINTS = 0.55;
  // Just above and just below what each gauge loses, half a printed place either side.
  it.each([
    [JOINTS + 1.475, '14'],
    [JOINTS + 0.935, '12'],
    [JOINTS + 0.585, '10'],
    [JOINTS + 1.465, '12'],
    [JOINTS + 0.925, '10'],
    [JOINTS + 0.575, '8'],
  ])('at most %f V: %s AWG', (drop, gauge) => {
    const found = ask(fed, { input: 'part.gauge', result: 'drop', drop: `${drop} V` });
    const sizes = triedInput('part.gauge', evaluate(fed).asFound.values).only!;
    const least = Math.min(...found.looks.filter(({ y }) => y <= drop).map(({ x }) => x));
    expect(sizes.find(({ x }) => x === least)!.name).toBe(gauge);
    if (found.value !== null) expect(found.value).toBe(least);
  });
});
