/** Every formula of the liquid side. */
export * from './hoseFormulas';
export * from './frictionFormulas';
export * from './coreLossFormulas';
export * from './pumpFormulas';
export * from './runFormulas';
