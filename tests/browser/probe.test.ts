/** Two readings, a box of resistors, a phone: to the network to solder, counted as a person goes. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { blank, press } from './sheet';
import { go, visits } from './visit';

const visit = visits();

describe('on a phone, with a kettle and ice', () => {
  it('gets from the sheet to a network with its values in seven touches, all within two screens', async () => {
    const page = await visit('', { width: 390, height: 844 });
    await press(page, 'New job');
    await page.getByRole('heading', { level: 1, name: 'Untitled job' }).waitFor();
    await go(page, 'sheets/probe/');
    let done = 0;
    /** A touch of the blank and what is typed into it. */
    const type = async (label: string, text: string) => {
      await blank(page, label).click();
      await blank(page, label).fill(text);
      done += 2;
    };
    // 1.5 kΩ fitted where the reader's table was made for about 1.2 kΩ: both baths too warm.
    await type('Reader shows in ice water', '40 °F');
    await type('Reader shows in boiling water', '227 °F');
    await type('Bias resistor fitted', '1.5k');
    await page.locator('h1').click();
    done += 1;
    expect(done).toBeLessThanOrEqual(7);
    const drawing = circuit(page);
    // One resistor across the bias: 1 / (1/1204 - 1/1500) is 6.1 kΩ, and E12 has 5.6 kΩ nearest below.
    await expect.poll(() => drawing.textContent(), { timeout: 60_000 }).toMatch(/1,500 Ω.*5,600 Ω/);
    // Nothing to hunt for: the drawing follows the blanks.
    const top = (await drawing.boundingBox())!.y + (await page.evaluate(() => scrollY));
    expect(top).toBeLessThan(2.5 * 844);
  });

  it('those on hand are asked for in the same group, once chosen', async () => {
    const page = await visit('sheets/probe/', { width: 390, height: 844 });
    await page.getByLabel('Resistors to choose from').selectOption('hand');
    await page.locator('div.first').getByText('Resistors on hand').first().waitFor();
  });
});

const circuit = (page: Page) => page.getByRole('img', { name: /bias resistor from the supply/i });
