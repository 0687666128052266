import { SHEETS } from '$sheets/abouts';
import { loadSheet } from '$sheets/components';

export async function load() {
  const sheets = await Promise.all(
    SHEETS.map(async (about) => ({
      about,
      Sheet: (await loadSheet(about.slug)!()).default,
    })),
  );
  return { sheets };
}
