/** Names of entries as they stand under a heading; assistive technology always gets the full name. */

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * The part of a label that its heading does not say already.
 * @example shortLabel('Reservoir to pump: bore', 'Hose, reservoir to pump') // 'Bore'
 */
export function shortLabel(label: string, heading: string): string {
  const [, place, rest] = /^(.+?): (.+)$/.exec(label) ?? [];
  const said = place && heading.toLowerCase().includes(place.toLowerCase());
  return said && rest ? capital(rest) : label;
}
