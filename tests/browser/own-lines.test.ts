/** Lines the reader adds to a sheet: words, photos, calculations; live, kept, printed, for everyone. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { axe } from './browser';
import { openFile, saveFile } from './files';
import { clipped, onPaper, onScreen, readPdf, textOf } from './paper';
import { blank, choose, press, readingOf } from './sheet';
import { addressOf, drawn, go, visits } from './visit';

const visit = visits();
const PLACE = 'sheets/loop-balance/';
const folder = mkdtempSync(join(tmpdir(), 'own-lines-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const lines = (page: Page) => page.getByRole('list', { name: 'Your own lines' });
const line = (page: Page, kind: string) => lines(page).locator(`[data-own="${kind}"]`);
const written = (page: Page, name: string): Locator =>
  page.getByRole('textbox', { name, exact: true });

/** A busy machine takes its time over a picture. */
const poll = <T>(read: () => T | Promise<T>, options: { message?: string } = {}) =>
  expect.poll(read, { timeout: 30_000, ...options });

async function calculation(page: Page, statement: string, expression: string): Promise<void> {
  await press(page, 'Add a calculation');
  await written(page, 'What it finds').fill(statement);
  await written(page, 'Calculation').fill(expression);
}
const done = (page: Page) => press(page, /^Done/);

/** Result of the loop as found; nothing while there is none. */
const result = async (page: Page): Promise<number | undefined> => {
  const text = await line(page, 'calculation').locator('.value b').first().textContent();
  return text === null ? undefined : readingOf(text).value;
};

/** A picture made in the page: wide, with a transparent corner. */
async function picture(page: Page, width: number, height: number): Promise<Buffer> {
  const bytes = await page.evaluate(
    async ([w, h]) => {
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [w!, h!];
      const context = canvas.getContext('2d')!;
      context.fillStyle = '#2a7';
      context.fillRect(0, 0, w!, h! / 2);
      const blob = await new Promise<Blob | null>((made) => canvas.toBlob(made, 'image/png'));
      return [...new Uint8Array(await blob!.arrayBuffer())];
    },
    [width, height],
  );
  return Buffer.from(bytes);
}
const give = (page: Page, name: string, mimeType: string, buffer: Buffer) =>
  page.getByLabel('Photo from a file').setInputFiles({ name, mimeType, buffer });

describe('a calculation', () => {
  it('is worked out over the sheet’s symbols, follows the inputs and is there again', async () => {
    const page = await visit(PLACE);
    await calculation(page, 'Charge heat per degree above ambient', 'Q_c / (T_3 - T_amb)');
    await poll(() => result(page)).toBeGreaterThan(0);
    const before = await result(page);
    await blank(page, 'Ambient air', 'as found').fill('60 °F');
    await poll(() => result(page)).not.toBe(before);
    const changed = await result(page);
    await page.reload();
    await drawn(page);
    await poll(() => result(page)).toBe(changed);
    const us = await line(page, 'calculation').locator('.unit').first().textContent();
    expect(us).toMatch(/Btu/);
    await choose(page, 'Units', 'SI');
    await poll(() => line(page, 'calculation').locator('.unit').first().textContent()).toMatch(
      /W\/K/,
    );
  });

  it('says in words what is wrong, at its blank, and reaches nothing outside', async () => {
    const page = await visit(PLACE);
    await calculation(page, '', 'Q_c + T_3');
    const box = written(page, 'Calculation');
    const told = () =>
      box.evaluate((input) =>
        (input.getAttribute('aria-describedby') ?? '')
          .split(' ')
          .map((id) => document.getElementById(id)?.textContent ?? '')
          .join(' '),
      );
    for (const [text, words] of [
      ['Q_c + T_3', /You add a temperature \(K\) to a heat flow \(W\)/],
      ['Q_c.constructor', /numbers, units, symbols/],
      ['import(Q_c)', /cannot be called here/],
      ['createUnit("foo")', /no place in a calculation/],
      ['nothing * 2', /neither a symbol of this sheet/],
      ['Q_c / (T_3 - T_3)', /divides by nought/],
    ] as const) {
      await box.fill(text);
      await poll(told, { message: text }).toMatch(words);
      expect(await box.getAttribute('aria-invalid')).toBe('true');
      expect(await box.inputValue()).toBe(text);
    }
    await box.fill('2 * Q_c');
    await poll(() => box.getAttribute('aria-invalid')).toBeNull();
    await written(page, 'Unit wanted').fill('gpm');
    await line(page, 'calculation').getByText('The result is a heat flow (W).').first().waitFor();
  });

  it('takes a symbol from the list by keyboard, and feeds the line below it', async () => {
    const page = await visit(PLACE);
    await calculation(page, 'Twice the charge heat', '2 * ');
    await page.getByText(/^Symbols to use/).click();
    await page.getByLabel('Find', { exact: true }).fill('heat from the charge');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await written(page, 'Calculation').inputValue()).toBe('2 * Q_c');
    await written(page, 'Its symbol').fill('Q_double');
    await page.keyboard.press('Escape');
    await calculation(page, 'A quarter of it', 'Q_double / 4');
    const of = async (i: number) =>
      readingOf((await lines(page).locator('.value b').nth(i).textContent()) ?? '').value;
    await poll(() => lines(page).locator('.value b').count()).toBeGreaterThan(1);
    const count = await lines(page).locator('.value b').count();
    // With a candidate each line has two results; the first of each is the loop as found.
    const [twice, quarter] = [await of(0), await of(count / 2)];
    expect(Math.abs(quarter - twice / 4)).toBeLessThan(1e-3 * twice);
  });
});

describe('words and photos', () => {
  it('stand below the sheet’s lines, numbered on, in the order they are given', async () => {
    const page = await visit(PLACE);
    const last = Number(
      await page
        .getByRole('list', { name: 'Lines', exact: true })
        .locator('.number')
        .last()
        .textContent(),
    );
    await press(page, 'Add words');
    await written(page, 'Words').fill('Fins bent over the lower third.');
    await done(page);
    await calculation(page, 'Half', 'Q_c / 2');
    await done(page);
    const numbers = () => lines(page).locator('.number').allTextContents();
    expect(await numbers()).toEqual([String(last + 1), String(last + 2)]);
    await press(page, `Move line ${last + 2} up`);
    await poll(() => lines(page).locator('[data-own]').first().getAttribute('data-own')).toBe(
      'calculation',
    );
    expect(await numbers()).toEqual([String(last + 1), String(last + 2)]);
    await press(page, `Remove line ${last + 1}`);
    await poll(() => lines(page).locator('[data-own]').count()).toBe(1);
    await lines(page).getByText('Fins bent over the lower third.').waitFor();
  });

  it('a photo is scaled, kept, undone and redone, and travels in the file', async () => {
    const page = await visit(PLACE);
    await give(page, 'tank.png', 'image/png', await picture(page, 2400, 1200));
    await written(page, 'Caption').fill('Tank outlet');
    await done(page);
    const photo = () => line(page, 'photo').getByRole('img', { name: 'Tank outlet' });
    const size = async () => [
      await photo().getAttribute('width'),
      await photo().getAttribute('height'),
    ];
    expect(await size()).toEqual(['1600', '800']);
    expect(await photo().getAttribute('src')).toMatch(/^data:image\/jpeg;base64,/);
    // What was transparent is white, not black: the lower half of the picture.
    const below = await photo().evaluate(async (img: HTMLImageElement) => {
      await img.decode();
      const canvas = document.createElement('canvas');
      [canvas.width, canvas.height] = [img.naturalWidth, img.naturalHeight];
      const context = canvas.getContext('2d')!;
      context.drawImage(img, 0, 0);
      return [...context.getImageData(800, 700, 1, 1).data];
    });
    expect(Math.min(...below)).toBeGreaterThan(250);

    await page.reload();
    await drawn(page);
    await photo().waitFor();
    expect(await size()).toEqual(['1600', '800']);
    const stored = await page.evaluate(() =>
      Math.max(...Object.values(localStorage).map((text) => String(text).length)),
    );
    expect(stored).toBeLessThan(200_000);

    await press(page, /^Remove line/);
    await poll(() => line(page, 'photo').count()).toBe(0);
    await press(page, 'Undo');
    await photo().waitFor();
    await press(page, 'Redo');
    await poll(() => line(page, 'photo').count()).toBe(0);
    await go(page, '');
    const without = await saveFile(page);
    expect(JSON.parse(without.text).photos).toEqual({});
  });

  it('the file holds the photo and brings it into another browser', async () => {
    const page = await visit(PLACE);
    await give(page, 'tank.png', 'image/png', await picture(page, 300, 200));
    await written(page, 'Caption').fill('Small tank');
    await go(page, '');
    const { text } = await saveFile(page);
    const photos = Object.values(JSON.parse(text).photos as Record<string, { width: number }>);
    expect(photos).toMatchObject([{ type: 'image/jpeg', width: 300, height: 200 }]);

    const other = await visit();
    await openFile(other, 'job.json', text);
    // A file is read beside the page: going elsewhere before it is there would leave it unread.
    const jobs = () =>
      other.evaluate(
        () => Object.keys(localStorage).filter((key) => key.startsWith('soakline.job.')).length,
      );
    await expect.poll(jobs, { timeout: 60_000 }).toBe(2);
    await other
      .getByRole('link', { name: /Loop balance/ })
      .first()
      .click();
    await drawn(other);
    await line(other, 'photo').getByRole('img', { name: 'Small tank' }).waitFor();
  });

  it('what is no picture is refused in words', async () => {
    const page = await visit(PLACE);
    const said = page.getByRole('status');
    await give(page, 'notes.txt', 'text/plain', Buffer.from('words'));
    await said.getByText('notes.txt is not a picture.').waitFor();
    await give(page, 'broken.png', 'image/png', Buffer.from('not a picture'));
    await said.getByText('broken.png cannot be read as a picture.').waitFor();
    await give(page, 'phone.heic', 'image/heic', Buffer.from('ftypheic'));
    await said.getByText(/phone.heic is an HEIC picture, which this browser cannot read/).waitFor();
    expect(await lines(page).count()).toBe(0);
  });

  it('a picture can be dropped or pasted', async () => {
    const page = await visit(PLACE);
    const bytes = [...(await picture(page, 40, 30))];
    for (const kind of ['drop', 'paste']) {
      const before = await line(page, 'photo').count();
      await page.evaluate(
        ({ kind, bytes }) => {
          const data = new DataTransfer();
          data.items.add(new File([new Uint8Array(bytes)], `${kind}.png`, { type: 'image/png' }));
          const event =
            kind === 'drop'
              ? new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true })
              : new ClipboardEvent('paste', {
                  clipboardData: data,
                  bubbles: true,
                  cancelable: true,
                });
          (kind === 'drop'
            ? document.querySelector('[data-own-add]')!
            : document.body
          ).dispatchEvent(event);
        },
        { kind, bytes },
      );
      await poll(() => line(page, 'photo').count(), { message: kind }).toBe(before + 1);
    }
  });
});

describe('on paper and for everyone', () => {
  it('own lines print like the others, the photo whole; the page keeps WCAG 2.2 AA', async () => {
    const page = await visit(PLACE, { width: 1280 });
    await press(page, 'Add words');
    await written(page, 'Words').fill('Combed out before the second run.');
    await done(page);
    await calculation(page, 'Charge heat per degree', 'Q_c / (T_3 - T_amb)');
    await done(page);
    await give(page, 'tall.png', 'image/png', await picture(page, 900, 1600));
    await written(page, 'Caption').fill('Tall hose run');
    // Blanks open: everything is looked at.
    expect(await axe(page, '.lines')).toEqual([]);
    await page.setViewportSize({ width: 390, height: 900 });
    expect(
      await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      ),
    ).toBe(0);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await axe(page, '.lines')).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });

    const bytes = await page.pdf({ preferCSSPageSize: true, printBackground: false });
    const file = join(folder, 'own.pdf');
    writeFileSync(file, bytes);
    expect(readPdf(bytes).images).toBe(1);
    await onPaper(page, 'Letter', 13);
    expect(await clipped(page)).toEqual([]);
    const laidOut = await page.locator('body').innerText();
    const text = (textOf(file) ?? laidOut).replace(/\s+/g, ' ');
    for (const words of [
      'Combed out before the second run.',
      'Charge heat per degree',
      'Tall hose run',
      'own line',
    ]) {
      expect(text, words).toContain(words);
    }
    for (const words of ['Add a calculation', 'Symbols to use', 'Unit wanted'])
      expect(text, words).not.toContain(words);
    const tall = await line(page, 'photo').getByRole('img').boundingBox();
    // A page of Letter less its margins is 10 in high: 960 px.
    expect(tall!.height).toBeLessThan(500);
    expect(Math.abs(tall!.width / tall!.height - 900 / 1600)).toBeLessThan(0.02);
    await onScreen(page);
  });

  it('stand in the folder with their sheet', async () => {
    const page = await visit(PLACE);
    await press(page, 'Add words');
    await written(page, 'Words').fill('Said once, found in the folder.');
    await page.goto(addressOf('folder/'));
    await drawn(page);
    await page.getByText('Said once, found in the folder.').first().waitFor();
  });
});
