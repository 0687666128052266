/** The way a job goes: first start, an edit, what it moves elsewhere, what is kept. */
import { describe, expect, it } from 'vitest';
import { SHEETS } from '$sheets/abouts';
import { blank, choose, crossing, found, headline, press } from './sheet';
import { addressOf, drawn, visits } from './visit';

const visit = visits();
const BORE = 'Pump to first core: bore';
const FLOW = 'Liquid flow';
const CHARGE = 'Charge air to the engine';
const DUTY = 'Duty held until it settles';

describe('the first start', () => {
  it('opens an invented job and says where its loop stands, as found and with the change', async () => {
    const desk = await visit();
    await desk.getByText(/invented for demonstration/).waitFor();
    const stands = await headline(desk, 'Reservoir, cruise');
    expect(stands).toHaveLength(2);
    for (const { value, unit } of stands) {
      expect(unit).toBe('°F');
      // Liquid water: a settled loop is neither ice nor steam.
      expect(value).toBeGreaterThan(32);
      expect(value).toBeLessThan(300);
    }
    expect(stands[1]!.value).not.toBe(stands[0]!.value);
    for (const { title } of SHEETS) {
      expect(await desk.getByRole('main').getByRole('link', { name: title }).count()).toBe(1);
    }
  });
});

describe('a wider hose', () => {
  it('moves flow, plot and temperatures; is kept, seen by a second tab, taken back', async () => {
    const page = await visit('sheets/pump-and-restriction/');
    // Held at full load the charge air feels the flow most.
    await choose(page, DUTY, 'Pull');
    const second = await page.context().newPage();
    await second.goto(addressOf('sheets/loop-balance/'));
    await drawn(second);
    const flow = await found(page, FLOW);
    const charge = await found(second, CHARGE);
    expect((await found(second, FLOW)).text).toBe(flow.text);
    const operatingPoint = () => crossing(page, 'Pump and loop', { falls: 'pump', rises: 'loop' });
    expect(Math.abs((await operatingPoint()) - flow.value)).toBeLessThan(0.01 * flow.value);

    const bore = blank(page, BORE, 'as found');
    const was = await bore.inputValue();
    await bore.click();
    await page.keyboard.press('ControlOrMeta+a');
    await bore.pressSequentially('3/4 in');
    await expect.poll(async () => (await found(page, FLOW)).value).toBeGreaterThan(flow.value);
    const wider = await found(page, FLOW);
    expect(Math.abs((await operatingPoint()) - wider.value)).toBeLessThan(0.01 * wider.value);
    expect(wider.value).toBeGreaterThan(1.05 * flow.value);

    // The other tab follows without a reload.
    await expect.poll(async () => (await found(second, FLOW)).text).toBe(wider.text);
    expect((await found(second, CHARGE)).value).toBeLessThan(charge.value);

    await page.reload();
    await drawn(page);
    expect(await blank(page, BORE, 'as found').inputValue()).toBe('3/4 in');
    expect((await found(page, FLOW)).text).toBe(wider.text);

    // Undo in the tab that made no edit of its own goes back across the other tab's edit.
    while ((await found(second, FLOW)).text !== flow.text) await press(second, 'Undo');
    expect((await found(second, CHARGE)).text).toBe(charge.text);
    await expect.poll(() => blank(page, BORE, 'as found').inputValue()).toBe(was);
    expect((await found(page, FLOW)).text).toBe(flow.text);
  });

  it('is taken back by the keys of undo, and done again', async () => {
    const page = await visit('sheets/pump-and-restriction/');
    const before = await found(page, FLOW);
    await blank(page, BORE, 'as found').fill('0.7 in');
    await expect.poll(async () => (await found(page, FLOW)).text).not.toBe(before.text);
    const after = await found(page, FLOW);
    // In a blank the keys belong to the text; outside of it, to the job.
    await page.getByRole('heading', { level: 1 }).click();
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.press('Control+z');
    await expect.poll(async () => (await found(page, FLOW)).text).toBe(before.text);
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(async () => (await found(page, FLOW)).text).toBe(after.text);
  });
});
