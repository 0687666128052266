/** Who asks what to buy first reads it on the first screen: a number, its ±, how sure; and on paper. */
import { describe, expect, it } from 'vitest';
import { visits } from './visit';

const visit = visits();

/** Two things bought and priced, each with its ±, and how often the first is the better. */
const ANSWER =
  /Do “.+” .*first: \$85 take [\d.]+ ± [\d.]+ °F off the charge air settled at cruise, \$[\d.]+ ± \$[\d.]+ \/°F: the cheapest degrees in (every one|[\d.]+ %) of the [\d,]+ loops/;

describe.each([
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])('sheet 17 at $width px', (size) => {
  it('answers without scrolling', { timeout: 120_000 }, async () => {
    const page = await visit('sheets/upgrades/', size);
    const lead = page.getByRole('region', { name: 'The answer' }).getByRole('paragraph').first();
    await lead.waitFor({ timeout: 60_000 });
    const said = async () => (await lead.innerText()).replace(/\s+/g, ' ');
    await expect.poll(said, { timeout: 90_000 }).toMatch(ANSWER);
    const box = (await lead.boundingBox())!;
    expect(await page.evaluate(() => scrollY)).toBe(0);
    expect(box.y + box.height).toBeLessThanOrEqual(size.height);
    // Nothing hangs out of the page.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(size.width);
  });
});
