/** Lines the sheets show of the balance: heats that enter, the heat that leaves, where they meet. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';

const conductance = (tex: string, name: string) =>
  ({ tex, quantity: 'conductance', name }) as const;
const temperature = (tex: string, name: string) =>
  ({ tex, quantity: 'temperature', name }) as const;
const heat = (tex: string, name: string) => ({ tex, quantity: 'heat', name }) as const;

const C = conductance('C_l', 'heat the liquid carries per degree');
const ambient = temperature('T_{amb}', 'ambient temperature');
const frontIn = temperature('T_{f,in}', 'liquid into the front exchanger');
const entering = heat('\\dot Q_{in}', 'heat entering the liquid');

export const bayAir = defineFormula({
  id: 'loop.bay-air',
  expr: 'T_amb + dT_b',
  gives: temperature('T_b', 'air in the engine bay'),
  terms: {
    T_amb: ambient,
    dT_b: {
      tex: '\\Delta T_b',
      quantity: 'temperatureDifference',
      name: 'rise of the bay above ambient',
    },
  },
  source: SOURCES.definition,
});

/** Heat a well-mixed place takes up from around it; see `goRound`. */
export const soakHeat = defineFormula({
  id: 'loop.soak-heat',
  expr: 'C * G / (C + G) * (T_s - T_l)',
  gives: heat('\\dot Q_s', 'heat soaked in'),
  terms: {
    C,
    G: conductance('G_s', 'conductance from around the place into it'),
    T_s: temperature('T_s', 'temperature around the place'),
    T_l: temperature('T_l', 'liquid arriving there'),
  },
  source: SOURCES.energyBalance,
});

export const reservoirSoak = defineFormula({
  id: 'loop.reservoir-soak',
  expr: '(1 - s) * C * G / ((1 - s) * C + G) * (T_s - T_l)',
  gives: heat('\\dot Q_t', 'heat into the reservoir from around it'),
  terms: {
    s: {
      tex: 's',
      quantity: 'ratio',
      name: 'share of the return that goes straight to the outlet',
    },
    C,
    G: conductance('G_t', 'conductance from the bay into the reservoir'),
    T_s: temperature('T_b', 'air in the engine bay'),
    T_l: temperature('T_{ret}', 'liquid arriving at the reservoir'),
  },
  source: SOURCES.energyBalance,
});

export const heatEntering = defineFormula({
  id: 'loop.heat-entering',
  expr: 'Q_c + Q_e + Q_h + Q_t + Q_p',
  gives: entering,
  terms: {
    Q_c: heat('\\dot Q_c', 'heat from the charge air'),
    Q_e: heat('\\dot Q_e', 'heat from the engine'),
    Q_h: heat('\\dot Q_h', 'heat into the hoses'),
    Q_t: heat('\\dot Q_t', 'heat into the reservoir'),
    Q_p: heat('\\dot Q_p', 'heat from the pump'),
  },
  source: SOURCES.energyBalance,
});

export const heatLeaving = defineFormula({
  id: 'loop.heat-leaving',
  expr: 'G * (T_f - T_amb)',
  gives: heat('\\dot Q_f', 'heat leaving at the front exchanger'),
  terms: {
    G: conductance('G', 'heat per degree between its liquid inlet and ambient'),
    T_f: frontIn,
    T_amb: ambient,
  },
  source: SOURCES.energyBalance,
});

export const settlesAt = defineFormula({
  id: 'loop.settles-at',
  expr: 'T_amb + Q_in / G',
  gives: frontIn,
  terms: {
    T_amb: ambient,
    Q_in: entering,
    G: conductance('G', 'heat per degree between liquid inlet and ambient'),
  },
  source: SOURCES.energyBalance,
});

export const boilingMargin = defineFormula({
  id: 'loop.boiling-margin',
  expr: 'T_boil - T_hot',
  gives: {
    tex: '\\Delta T_{boil}',
    quantity: 'temperatureDifference',
    name: 'hottest liquid below boiling',
  },
  terms: {
    T_boil: temperature('T_{boil}', 'boiling point at the pressure of the reservoir'),
    T_hot: temperature('T_{hot}', 'hottest liquid in the loop'),
  },
  source: SOURCES.definition,
});
