/**
 * Headings as loggers and people write them, each with the channel it is; all invented. Names in English
 * with a few of other languages; units in brackets, after a comma or an underscore.
 */
import type { LogChannel } from '$lib/log/channels';

export const HEADINGS: Readonly<Record<LogChannel, readonly string[]>> = {
  time: ['Time (s)', 'timestamp_ms', 't [s]', 'Elapsed time, s', 'Zeit (s)', 'Log time (ms)'],
  frontOut: [
    'Coolant out of front exchanger (°F)',
    'Out of front exchanger (degF)',
    'From front exchanger (°C)',
    'HX_out_degC',
    'Radiator outlet water (C)',
    'hx.outlet.temp [°C]',
    'frontExchangerOutTemp (°C)',
    'Water leaving heat exchanger (°C)',
    'Rad out, degC',
  ],
  frontIn: [
    'Coolant into front exchanger (°F)',
    'Into front exchanger (degF)',
    'To front exchanger (°C)',
    'HX_in_degC',
    'H/X inlet temp (°F)',
    'FrontHxIn (°F)',
    'HE in (F)',
    'Water before radiator (°C)',
  ],
  reservoir: [
    'Tank temp (°F)',
    'Reservoir (°C)',
    'RES_TEMP (degC)',
    'coolant tank T [°C]',
    'Ice box temp (F)',
    'Ice chest (°F)',
  ],
  chargeCoolerOut: [
    'Water out of intercooler (°F)',
    'Charge cooler out liquid (°C)',
    'IC_water_out_degC',
    'Liquid after charge cooler (°F)',
    'Coolant from aftercooler (°C)',
  ],
  chargeAirOut: [
    'IAT (°F)',
    'IAT2 (degC)',
    'Intake air temperature (°C)',
    'Manifold air temp (F)',
    'MAT [°C]',
    'Air out of charge cooler (°C)',
    'Post-intercooler air (°F)',
    'Charge air after cooler (°C)',
  ],
  chargeAirIn: [
    'Compressor outlet temp (°C)',
    'Blower discharge (°F)',
    'Pre-intercooler air temp (°F)',
    'Charge air before cooler (°C)',
    'Air into charge cooler (°C)',
    'Supercharger out (°F)',
    'CompOut_T (°C)',
  ],
  ambient: ['Ambient (°F)', 'Outside air temp (°C)', 'AAT (°C)', 'OAT_F'],
  flow: [
    'Coolant flow (gpm)',
    'Pump flow, L/min',
    'flow_lpm',
    'Water flow rate (L/h)',
    'Durchfluss (L/min)',
  ],
  volts: ['Pump volts (V)', 'Pump supply voltage [V]', 'Battery (V)', 'V_pump (V)'],
  amps: ['Pump current (A)', 'Amps, pump (A)', 'I_pump [A]'],
  vehicleSpeed: ['Vehicle speed (mph)', 'VSS (km/h)', 'GPS speed (mph)', 'Speed, km/h'],
  engineSpeed: ['Engine speed (rpm)', 'RPM', 'EngineRPM (rpm)'],
  manifold: ['MAP (kPa)', 'Boost (psi)', 'Manifold absolute pressure (kPa)'],
  airFlow: ['MAF (g/s)', 'Mass air flow (lb/min)', 'Air mass flow, kg/h'],
  heat: ['Heat load (kW)'],
};

/** What belongs to no channel of the loop, or does not say which. */
export const OTHERS: readonly string[] = [
  'Oil temp (°F)',
  'Oil pressure (psi)',
  'Throttle (%)',
  'Tank level (L)',
  'Fuel pressure (kPa)',
  'O2 sensor (V)',
  'Lambda',
  'Fan speed (rpm)',
  'Row',
  'Cylinder head temp (°F)',
  'Coolant temp (°F)',
  'Gear',
];
