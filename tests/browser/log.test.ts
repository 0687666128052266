/** A log opened, looked at, fitted and handed on, as a new user with nothing but a file goes. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { press } from './sheet';
import { go, visits } from './visit';

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

describe('moving about in the curves', () => {
  const shown = (page: Page) => page.locator('[aria-label="Time axis"] span.num').innerText();
  const middle = async (page: Page) => {
    const reader = page.getByRole('slider', { name: 'Read along the time of the log' });
    await reader.scrollIntoViewIfNeeded();
    const box = (await reader.boundingBox())!;
    // Taller than the window: somewhere in what is seen of it.
    return { x: box.x + box.width / 2, y: Math.max(box.y, 0) + 80 };
  };

  it('the wheel with Ctrl held zooms about the pointer, and without it leaves the page its scroll', async () => {
    const page = await visit('sheets/log/');
    await openInvented(page);
    const { x, y } = await middle(page);
    const whole = await shown(page);
    await page.mouse.move(x, y);
    await page.keyboard.down('Control');
    for (let i = 0; i < 4; i++) await page.mouse.wheel(0, -120);
    await page.keyboard.up('Control');
    await expect.poll(() => shown(page), PATIENT).not.toContain(whole);
    const [from] = /^[\d:]+/.exec(await shown(page))!;
    expect(from).not.toBe('0:00');
    await page.getByRole('button', { name: 'Whole log' }).click();
    await expect.poll(() => shown(page), PATIENT).toContain(whole.split(',')[0]!);
  });

  it('two fingers drawn apart zoom in', async () => {
    const page = await visit('sheets/log/', { width: 390, height: 844 });
    await openInvented(page);
    const { x, y } = await middle(page);
    const whole = await shown(page);
    const screen = await page.context().newCDPSession(page);
    await screen.send('Emulation.setTouchEmulationEnabled', { enabled: true, maxTouchPoints: 2 });
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart: number) =>
      screen.send('Input.dispatchTouchEvent', {
        type,
        touchPoints:
          type === 'touchEnd'
            ? []
            : [
                { x: x - apart, y, id: 1 },
                { x: x + apart, y, id: 2 },
              ],
      });
    await touch('touchStart', 20);
    for (let apart = 30; apart <= 120; apart += 10) await touch('touchMove', apart);
    await touch('touchEnd', 0);
    await expect.poll(() => shown(page), PATIENT).not.toContain(whole);
  });

  it('a file dropped on the blank is read', async () => {
    const page = await visit('sheets/log/');
    await page.locator('div.drop').evaluate((zone) => {
      const data = new DataTransfer();
      const rows = Array.from({ length: 20 }, (_, k) => `${k},${150 + k}`).join('\n');
      data.items.add(new File([`Time (s),Tank temp (°F)\n${rows}\n`], 'dropped.csv'));
      zone.dispatchEvent(new DragEvent('dragover', { dataTransfer: data, bubbles: true }));
      zone.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
    });
    await page.getByRole('button', { name: 'These are right' }).click();
    await page.getByText('dropped.csv').first().waitFor();
    await page.locator('div.plots svg').first().waitFor();
  });
});

describe('a large log', () => {
  const LONG = 400_000;
  const long = () => {
    const rows = Array.from(
      { length: LONG },
      (_, k) => `${k / 10},${6 + (k % 7) / 10},${12 + (k % 3) / 10}`,
    );
    return `Time (s),Coolant flow (gpm),Pump volts (V)\n${rows.join('\n')}\n`;
  };

  it('is drawn by a few points for each pixel, one plot in a frame, whatever its length', async () => {
    const page = await visit('sheets/log/');
    await choose(page, 'long.csv', long());
    await page.getByRole('button', { name: 'These are right' }).click(PATIENT);
    await page.locator('div.plots svg').first().waitFor();
    const [corners, width] = await page
      .locator('div.plots svg')
      .first()
      .evaluate((svg) => [
        [...svg.querySelectorAll('path.line, path.band')]
          .map((path) => path.getAttribute('d'))
          .join('')
          .split(/[LHM]/).length,
        svg.clientWidth,
      ]);
    // Two steps for every two pixels, above and below: what one plot draws at once has this bound.
    expect(corners).toBeLessThanOrEqual(2 * width! + 8);
    expect(corners).toBeGreaterThan(100);
  });

  it('reading it can be stopped; nothing is changed by it', async () => {
    const page = await visit('sheets/log/');
    await openInvented(page);
    const name = 'stopped.csv';
    // Stopped by the page itself as soon as it can be: a test would come too late.
    await page.evaluate(() => {
      new MutationObserver(() => {
        for (const button of document.querySelectorAll('button'))
          if (button.textContent?.trim() === 'Stop reading') button.click();
      }).observe(document.body, { childList: true, subtree: true });
    });
    await choose(page, name, long());
    await page.getByText('Reading was stopped').waitFor(PATIENT);
    expect(await page.getByText(name).count()).toBe(0);
    expect(await page.locator('div.plots svg').count()).toBeGreaterThan(5);
  });

  it('marking and searching can be stopped; it is said, and can be taken up again', async () => {
    const page = await visit('sheets/log/');
    await openInvented(page);
    const before = await says(page);
    await choose(page, 'long.csv', long());
    const confirm = page.getByRole('button', { name: 'These are right' });
    await confirm.waitFor(PATIENT);
    await page.evaluate(() => {
      const watch = new MutationObserver(() => {
        const stop = [...document.querySelectorAll('button')].find(
          (button) => button.textContent?.trim() === 'Stop',
        );
        if (!stop) return;
        watch.disconnect();
        stop.click();
      });
      watch.observe(document.body, { childList: true, subtree: true });
    });
    await confirm.click();
    await page.getByText('The search was stopped').waitFor(PATIENT);
    expect(await says(page)).toBe(before);
    await confirm.click();
    await page.locator('div.plots svg').first().waitFor(PATIENT);
    expect(await page.getByText('The search was stopped').count()).toBe(0);
  });

  it('a file that claims 5 GB is refused before it is read', async () => {
    const page = await visit('sheets/log/');
    await page.locator('div.drop').evaluate((zone) => {
      const file = new File(['Time (s),Flow (gpm)\n0,6\n1,6\n'], 'huge.csv');
      Object.defineProperty(file, 'size', { value: 5e9 });
      // A DataTransfer copies its files and their true size; the event carries this one as it is.
      const event = new Event('drop', { bubbles: true, cancelable: true });
      Object.defineProperty(event, 'dataTransfer', { value: { files: [file] } });
      zone.dispatchEvent(event);
    });
    await expect
      .poll(() => error(page).innerText(), PATIENT)
      .toMatch(/huge\.csv: 5\.0 GB; at most 500 MB/);
  });
});

describe('with nothing but a file', () => {
  it('an empty job gets from the log to the UA with its ± and to what fell first, in two presses', async () => {
    const page = await visit('sheets/log/');
    await go(page, '');
    await press(page, 'New job');
    await page.getByRole('heading', { level: 1, name: 'Untitled job' }).waitFor();
    await go(page, 'sheets/log/');
    await page.getByRole('button', { name: 'Open the invented log' }).click();
    await page.getByRole('button', { name: 'These are right' }).click();
    await expect
      .poll(() => says(page), { timeout: 120_000 })
      .toMatch(/Your front exchanger’s UA is [\d,.]+ (\S+ )*± [\d,.]+/);
    expect(await says(page)).toMatch(/the pump’s flow fell by 3[\d.]+ % .* before volts/);
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
