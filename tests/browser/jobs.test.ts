/** Jobs on the desk: new, duplicated, saved to a file and read back, removed after being asked. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { openFile, saveFile } from './files';
import { blank, headline, press } from './sheet';
import { drawn, go, visits } from './visit';

const visit = visits();

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
/** The jobs kept in the browser, one list item each. */
const shelf = (page: Page) =>
  page
    .getByRole('heading', { name: 'Kept in this browser' })
    .locator('xpath=following-sibling::ul')
    .getByRole('listitem');

describe('jobs', () => {
  it('begin anew and as a copy; each keeps its own values', async () => {
    const page = await visit();
    const name = await heading(page).innerText();
    await press(page, 'New job');
    await expect.poll(() => heading(page).innerText()).toBe('Untitled job');
    await blank(page, 'Job').fill('Second bay');
    await expect.poll(() => heading(page).innerText()).toBe('Second bay');
    await press(page, 'Duplicate');
    await expect.poll(() => heading(page).innerText()).toBe('Second bay (copy)');
    await blank(page, 'Vehicle').fill('Van, invented');
    expect(await shelf(page).count()).toBe(3);

    await page.reload();
    await drawn(page);
    expect(await heading(page).innerText()).toBe('Second bay (copy)');
    expect(await blank(page, 'Vehicle').inputValue()).toBe('Van, invented');
    const first = shelf(page).filter({ hasText: name });
    await first.getByRole('button', { name: 'Open' }).click();
    await expect.poll(() => heading(page).innerText()).toBe(name);
    await shelf(page)
      .filter({ hasText: 'Second bay' })
      .filter({ hasNotText: 'copy' })
      .getByRole('button', { name: 'Open' })
      .click();
    expect(await blank(page, 'Vehicle').inputValue()).toBe('');
  });

  it('are saved as a file that opens to the same job', async () => {
    const page = await visit('sheets/pump-and-restriction/');
    await blank(page, 'Voltage at the pump', 'as found').fill('12.1 V');
    await blank(page, 'Pump to first core: bore', 'as found').fill('8 gpm'); // refused, kept
    await page.getByRole('textbox', { name: 'Notes of this sheet' }).fill('Line one\nand “two”');
    await go(page, '');
    const stands = await headline(page, 'Reservoir, cruise');
    const saved = await saveFile(page);
    expect(saved.name).toMatch(/^[a-z0-9-]+\.json$/);
    expect(JSON.parse(saved.text).soakline).toBeTypeOf('number');

    const elsewhere = await visit();
    expect(await headline(elsewhere, 'Reservoir, cruise')).not.toEqual(stands);
    await openFile(elsewhere, saved.name, saved.text);
    await expect.poll(() => headline(elsewhere, 'Reservoir, cruise')).toEqual(stands);
    expect((await saveFile(elsewhere)).text).toBe(saved.text);
    await go(elsewhere, 'sheets/pump-and-restriction/');
    const bore = blank(elsewhere, 'Pump to first core: bore', 'as found');
    expect(await bore.inputValue()).toBe('8 gpm');
    const notes = elsewhere.getByRole('textbox', { name: 'Notes of this sheet' });
    expect(await notes.inputValue()).toBe('Line one\nand “two”');
  });

  it('are removed only after being asked', async () => {
    const page = await visit();
    const name = await heading(page).innerText();
    await press(page, 'New job');
    await expect.poll(() => shelf(page).count()).toBe(2);
    const dialog = page.getByRole('dialog', { name: 'Remove this job from the browser?' });
    const remove = shelf(page)
      .filter({ hasText: name })
      .getByRole('button', { name: /^Remove/ });

    await remove.click();
    await dialog.getByText(name).waitFor();
    await dialog.getByRole('button', { name: 'Keep it' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(await shelf(page).count()).toBe(2);

    await remove.click();
    await dialog.getByRole('button', { name: 'Remove it' }).click();
    await expect.poll(() => shelf(page).count()).toBe(1);
    await page.reload();
    await drawn(page);
    expect(await shelf(page).count()).toBe(1);
    expect(await heading(page).innerText()).toBe('Untitled job');
  });
});
