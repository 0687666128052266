import { error } from '@sveltejs/kit';
import { SHEETS } from '$sheets/abouts';
import { loadSheet } from '$sheets/components';

export const entries = () => SHEETS.map(({ slug }) => ({ slug }));

export async function load({ params }: { params: { slug: string } }) {
  const about = SHEETS.find((sheet) => sheet.slug === params.slug);
  const component = loadSheet(params.slug);
  if (!about || !component) error(404, 'There is no sheet of that name.');
  return { about, Sheet: (await component()).default };
}
