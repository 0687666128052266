/** Job files on their way into and out of a page. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';

/** Give `text` to the desk as a file from disk. */
export async function openFile(page: Page, name: string, text: string): Promise<void> {
  await page
    .getByLabel('Job file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** What `Save as a file` hands out. */
export async function saveFile(page: Page): Promise<{ name: string; text: string }> {
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const download = await coming;
  return {
    name: download.suggestedFilename(),
    text: await readFile(await download.path(), 'utf8'),
  };
}
