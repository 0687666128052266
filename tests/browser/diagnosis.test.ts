/** From three readings to the one that decides, as a new user of the demonstration job goes. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { blank } from './sheet';
import { visits } from './visit';

const visit = visits();
const EITHER =
  'Either the pump lost its supply or it cavitates; read the volts at the pump during the event.';
/** A fault solved at every severity takes a second or so, and longer on a busy machine. */
const PATIENT = { timeout: 45_000 };

const THREE = [
  ['Flow by its meter', '1.5 gpm'],
  ['Amps of the pump', '3.0 A'],
  ['Pressure across the pump', '2.0 psi'],
] as const;

/** The sheet asks for the same readings in traffic and at cruise; traffic stands first. */
const inTraffic = (page: Page, label: string) => blank(page, label).first();

const says = async (page: Page) =>
  (await page.locator('section.findings').innerText()).replace(/[\s\u00a0]+/g, ' ');

describe('the demonstration job on the diagnosis sheet', () => {
  it('three readings leave two explanations, the fourth decides between them', async () => {
    const page = await visit('sheets/diagnosis/');
    // As it comes it has the three readings; a new user starts from none.
    await expect.poll(() => says(page), PATIENT).toContain(EITHER);
    for (const [label] of THREE) await inTraffic(page, label).fill('');
    await expect.poll(() => says(page), PATIENT).toContain('Nothing has been entered');

    for (const [label, text] of THREE) {
      expect(await says(page)).not.toContain(EITHER);
      await inTraffic(page, label).fill(text);
    }
    await expect.poll(() => says(page), PATIENT).toContain(EITHER);
    expect(await says(page)).not.toContain('That decides it');

    // What the plug has on the loop as described: the supply is well.
    const volts = inTraffic(page, 'Volts at the pump’s plug');
    await volts.fill('10.9 V');
    await expect
      .poll(() => says(page), PATIENT)
      .toMatch(/“Cavitation[^”]*” fits the readings best, with (9\d|100).* That decides it/);
    expect(await says(page)).not.toContain(EITHER);

    // The mean that a slow meter shows while the supply comes and goes.
    await volts.fill('7.5 V');
    await expect
      .poll(() => says(page), PATIENT)
      .toMatch(/“Breaker cycling” fits the readings best, with (9\d|100).* That decides it/);
    expect(await says(page)).not.toContain(EITHER);
  });

  it('says that faults are being solved, and meanwhile takes what is typed', async () => {
    const page = await visit('sheets/diagnosis/');
    await expect.poll(() => says(page), PATIENT).toContain(EITHER);
    await blank(page, 'Ambient air then').fill('80 °F');
    // Said at the head and in the place of each part that waits.
    await page.getByText('Working out every fault').first().waitFor();
    // Still under way, on another thread: the page answers.
    await inTraffic(page, 'Amps of the pump').fill('2.9 A');
    expect(await inTraffic(page, 'Amps of the pump').inputValue()).toBe('2.9 A');
    await expect.poll(() => says(page), PATIENT).toMatch(/fits the readings best|contradict/);
  });
});
