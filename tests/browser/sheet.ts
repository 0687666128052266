/** What a person reads and types on a page, found by its role and label. */
import { expect } from 'vitest';
import type { Locator, Page } from 'playwright-core';

export type Side = 'as found' | 'candidate';

/** The blank of an input; with a candidate in the job there are two, told apart by their side. */
export const blank = (page: Page, label: string, side?: Side): Locator =>
  page.getByRole('textbox', { name: side ? `${label}, ${side}` : label, exact: true });

/** A choice drawn as a list. */
export const list = (page: Page, label: string, side?: Side): Locator =>
  page.getByRole('combobox', { name: side ? `${label}, ${side}` : label, exact: true });

/** Check one option of a choice drawn as joined cells, such as `Units` `SI`. */
export async function choose(page: Page, choice: string, option: string): Promise<void> {
  await page
    .getByRole('group', { name: choice, exact: true })
    .getByRole('radio', { name: option, exact: true })
    .check();
}

export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name, exact: typeof name === 'string' }).click();

/** What is said to a blank: everything that describes it to assistive technology. */
export const says = (box: Locator): Promise<string> =>
  box.evaluate((element) =>
    (element.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent ?? '')
      .join(' ')
      .replace(/\s+/g, ' ')
      .trim(),
  );

export const isRefused = async (box: Locator): Promise<boolean> =>
  (await box.getAttribute('aria-invalid')) === 'true';

export interface Reading {
  readonly value: number;
  readonly unit: string;
  /** As it stands on the page. */
  readonly text: string;
}

/** The first number with its unit in a text such as `As found: 2.157 gpm`. */
export function readingOf(text: string): Reading {
  const match = /([−-]?\d[\d.,]*)\s*([^\s\d][^\s]*)?/.exec(text.replaceAll('\u00a0', ' '));
  if (!match) throw new Error(`no number in “${text}”`);
  const value = Number(match[1]!.replace('−', '-').replaceAll(',', ''));
  return { value, unit: match[2] ?? '', text: match[0] };
}

/** A headline result by its name, one reading for each side. */
export async function headline(page: Page, name: string): Promise<Reading[]> {
  const term = page.getByRole('term').getByText(name, { exact: true });
  await term.waitFor();
  const cells = await term
    .locator('xpath=ancestor-or-self::dt/following-sibling::dd')
    .allTextContents();
  expect(cells.length, name).toBeGreaterThan(0);
  return cells.map(readingOf);
}

/** The headline result of the loop as found. */
export const found = async (page: Page, name: string): Promise<Reading> =>
  (await headline(page, name))[0]!;

/** Until two frames are painted: all that an edit moves is shown by then. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        const painted = () => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => done();
          port2.postMessage(null);
        };
        requestAnimationFrame(() => requestAnimationFrame(painted));
      }),
  );

/** Rows of a table by their heading, cells as text. */
export async function rows(table: Locator): Promise<Map<string, string[]>> {
  await settled(table.page());
  const all = await table
    .getByRole('row')
    .filter({ has: table.page().getByRole('rowheader') })
    .evaluateAll((list) =>
      list.map((row) => {
        const text = (cell: Element) =>
          (cell as HTMLElement).innerText.replace(/[\s\u00a0]+/g, ' ').trim();
        return [text(row.querySelector('th')!), [...row.querySelectorAll('td')].map(text)] as const;
      }),
    );
  return new Map(all.map(([head, cells]) => [head, [...cells]]));
}

/** Bring a plot into view, as a reader does, and give what the arrow keys move. */
export async function plotReader(page: Page, title: string): Promise<Locator> {
  await page.getByRole('figure', { name: title, exact: true }).scrollIntoViewIfNeeded();
  const reader = page.getByRole('slider', { name: title });
  await reader.focus();
  return reader;
}

/**
 * Where two curves of a plot cross, read with the arrow keys: stop by stop from the left until the
 * falling curve is no longer above, then by straight line between the last two stops.
 */
export async function crossing(
  page: Page,
  title: string,
  { falls, rises }: { falls: string; rises: string },
): Promise<number> {
  const reader = await plotReader(page, title);
  await settled(page);
  const last = Number(await reader.getAttribute('aria-valuemax'));
  const numberAfter = (text: string, label: string) => {
    const at = text.indexOf(label);
    return at < 0 ? NaN : readingOf(text.slice(at + label.length)).value;
  };
  let before: { x: number; gap: number } | null = null;
  await reader.press('Home');
  for (let i = 0; i <= last; i++) {
    const text = (await reader.getAttribute('aria-valuetext')) ?? '';
    const here = {
      x: readingOf(text).value,
      gap: numberAfter(text, falls) - numberAfter(text, rises),
    };
    if (before && before.gap > 0 && here.gap <= 0) {
      return before.x + ((here.x - before.x) * before.gap) / (before.gap - here.gap);
    }
    before = here;
    await page.keyboard.press('ArrowRight');
  }
  throw new Error(`“${falls}” and “${rises}” do not cross`);
}
