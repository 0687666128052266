/**
 * The kinds of quantity the solver speaks of, each with its SI unit in mathjs spelling.
 * Two kinds may share a unit and still differ on screen (a temperature and a difference of two;
 * a pressure in a tank and one across a core).
 */
export const SI_UNIT = {
  ratio: '',
  percent: '',
  count: '',
  temperature: 'K',
  temperatureDifference: 'K',
  absoluteTemperature: 'K', // shown in K or degR where a formula needs a ratio of temperatures
  pressure: 'Pa', // absolute
  gaugePressure: 'Pa',
  pressureDrop: 'Pa', // liquid side
  airPressure: 'Pa', // across a core or a fan
  head: 'm',
  length: 'm',
  bore: 'm',
  dimension: 'm', // of a core or a fan
  roughness: 'm',
  altitude: 'm',
  area: 'm^2',
  wireArea: 'm^2', // of copper
  volume: 'm^3',
  displacement: 'm^3',
  volumeFlow: 'm^3/s', // liquid
  airFlow: 'm^3/s',
  massFlow: 'kg/s',
  airMassFlow: 'kg/s',
  speed: 'm/s', // of the vehicle
  velocity: 'm/s', // of the liquid
  faceVelocity: 'm/s', // of the air
  acceleration: 'm/s^2',
  heat: 'W',
  power: 'W', // at the crankshaft
  electricPower: 'W',
  conductance: 'W/K',
  thermalResistance: 'K/W',
  heatCapacity: 'J/K',
  energy: 'J',
  specificHeat: 'J/(kg K)',
  latentHeat: 'J/kg',
  volumetricHeatCapacity: 'J/(m^3 K)',
  gasConstant: 'J/(kg K)',
  density: 'kg/m^3',
  viscosity: 'Pa s',
  conductivity: 'W/(m K)',
  heatTransferCoefficient: 'W/(m^2 K)',
  massVelocity: 'kg/(m^2 s)',
  finDensity: '1/m', // fins per length of tube
  mass: 'kg',
  time: 's',
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  rotation: '1/s',
  fuelUse: 'kg/J', // brake specific fuel consumption
  frequency: 'Hz', // of pulses
  pulsesPerVolume: 'm^-3', // of a flow meter
  beta: 'K', // of a thermistor
  perKelvin: 'K^-1', // coefficients of a thermistor, share lost per kelvin
  dissipation: 'W/K', // of a probe to what surrounds it
  money: 'dollar', // of whatever country: nothing is converted
  costPerDegree: 'dollar/K',
} as const;

/** Name of a kind of quantity. */
export type Quantity = keyof typeof SI_UNIT;
