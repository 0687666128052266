/** A log opened, looked at, fitted and handed on, as a new user with nothing but a file goes. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { visits } from './visit';

const visit = visits();
const PATIENT = { timeout: 60_000 };

const choose = (page: Page, name: string, text: string | Buffer) =>
  page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name,
      mimeType: 'text/csv',
      buffer: Buffer.from(text),
    });
const says = async (page: Page) =>
  (await page.locator('section.findings').innerText()).replace(/[\s\u00a0]+/g, ' ');
const error = (page: Page) => page.locator('#log-file-error');

async function openInvented(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the invented log' }).click();
  await page.locator('div.plots svg').first().waitFor();
}

describe('the invented log', () => {
  it('shows its curves; a stretch marked by the keyboard becomes a span and the fit is made of it', async () => {
    const page = await visit('sheets/log/');
    await openInvented(page);
    const reader = page.getByRole('slider', { name: 'Read along the time of the log' });
    await reader.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => reader.getAttribute('aria-valuetext')).toMatch(/Reservoir \d+/);
    await page.keyboard.press('Home');
    for (let i = 0; i < 3; i++) await page.keyboard.press('PageDown');
    for (let i = 0; i < 40; i++) await page.keyboard.press('Shift+ArrowRight');
    await page.getByRole('button', { name: 'Use for the fit' }).click();
    await expect.poll(() => says(page), PATIENT).toContain('The spans were changed since');

    await page.getByRole('button', { name: 'Work it out from these spans' }).click();
    await expect.poll(() => says(page), PATIENT).not.toContain('The spans were changed since');
    expect(await says(page)).toMatch(/Your front exchanger’s UA (is|comes out as)/);
    expect(await says(page)).toMatch(/flow fell by 3[\d.]+ %/);
  });

  it('one click puts the loop as measured beside the loop as entered, the plan before it aside', async () => {
    const page = await visit('sheets/log/');
    await page.getByRole('button', { name: 'Use as measured' }).click();
    await page.getByText('Every sheet shows the loop as measured').waitFor();
    await page.goto(page.url().replace('sheets/log/', 'sheets/exchangers/'));
    await page.getByText('As measured', { exact: false }).first().waitFor();
  });

  it('an event’s readings stand on the diagnosis after one click', async () => {
    const page = await visit('sheets/log/');
    await page.getByRole('button', { name: 'Pass to the diagnosis' }).first().click();
    await page.getByRole('link', { name: 'Open the diagnosis' }).click();
    const volts = page.getByLabel('Volts at the pump’s plug').nth(1);
    await expect.poll(() => volts.inputValue(), PATIENT).toMatch(/^9\.7/);
  });

  it('after a reload what was found is still there, and the file is asked for again', async () => {
    const page = await visit('sheets/log/');
    await openInvented(page);
    await page.reload();
    await page.getByText('open the file again to see its curves').waitFor();
    expect(await says(page)).toContain('Your front exchanger’s UA');
  });
});

describe('a file that is no log', () => {
  it.each([
    ['nothing', 'empty.csv', '', /nothing in this file/i],
    ['no names', 'bare.csv', '0,1,2\n1,2,3\n2,3,4\n', /names/],
    ['one row', 'one.csv', 'Time (s),Flow (gpm)\n0,6\n', /two rows/],
    [
      '300 columns',
      'wide.csv',
      `${Array.from({ length: 300 }, (_, i) => `c${i}`).join()}\n${Array(300).fill(1).join()}\n${Array(300).fill(2).join()}\n`,
      /300 columns/,
    ],
    ['only gaps', 'gaps.csv', 'Time (s),Flow (gpm)\n0,\n1,\n2,\n', /gaps/],
    ['bytes', 'photo.csv', Buffer.from([0xff, 0xd8, 0xff, 0, 1, 2, 3, 0, 0, 9]), /not a text file/],
  ] as const)(
    '%s: said beside the blank, the log before stays',
    async (_what, name, text, message) => {
      const page = await visit('sheets/log/');
      await openInvented(page);
      await choose(page, name, text as string);
      await expect.poll(() => error(page).innerText(), PATIENT).toMatch(message);
      expect(await page.locator('div.plots svg').count()).toBeGreaterThan(5);
    },
  );

  it('time that runs backwards is refused when the columns are confirmed; what was kept stays', async () => {
    const page = await visit('sheets/log/');
    await choose(page, 'back.csv', 'Time (s),Coolant flow (gpm)\n9,6\n8,6\n7,6\n6,6\n5,6\n4,6\n');
    await page.getByRole('button', { name: 'These are right' }).click();
    await expect.poll(() => error(page).innerText(), PATIENT).toMatch(/backwards/);
    expect(await says(page)).toContain('Your front exchanger’s UA');
  });
});

describe('a large log', () => {
  it('never holds the page for long while it is read, and can be stopped', async () => {
    const page = await visit('sheets/log/');
    const rows = Array.from(
      { length: 120_000 },
      (_, k) => `${k / 10},${6 + (k % 7) / 10},${12 + (k % 3) / 10}`,
    );
    const text = `Time (s),Coolant flow (gpm),Pump volts (V)\n${rows.join('\n')}\n`;
    await choose(page, 'long.csv', text);
    await page.getByRole('button', { name: 'These are right' }).waitFor();
    await page.getByRole('button', { name: 'These are right' }).click();
    await page.locator('div.plots svg').first().waitFor();
    // Thinned: far fewer points than rows.
    const path = (await page.locator('div.plots path.line').first().getAttribute('d'))!;
    expect(path.split('L').length).toBeLessThan(8000);
  });
});

describe('on a phone', () => {
  it('nothing is wider than the page and every target can be touched', async () => {
    const page = await visit('sheets/log/', { width: 390, height: 844 });
    await openInvented(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      390,
    );
    const small = await page
      .locator('.curves button, .open button, .open label.file, .rows select')
      .evaluateAll((all) =>
        all.filter((el) => el.getBoundingClientRect().height < 44).map((el) => el.textContent),
      );
    expect(small).toEqual([]);
  });
});
