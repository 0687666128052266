/** Every formula of the air side. */
export * from './faceFormulas';
export * from './fanFormulas';
export * from './airLossFormulas';
export * from './wholeFaceFormulas';
export * from './fanUseFormulas';
export * from './overlapFormulas';
