/** When a liquid counts as standing still. */

/** Below a millilitre a minute, m³/s. */
export const FLOW_STANDING = 1e-6 / 60;
