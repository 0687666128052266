/** Every line of the reservoir, by subject. */
export * from './airSpaceFormulas';
export * from './capacityFormulas';
export * from './pullFormulas';
