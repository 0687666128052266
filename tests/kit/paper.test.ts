import { expect, it } from 'vitest';
import { cssString, pageStyle } from '$lib/kit/paper';

it('names both papers by their sizes', () => {
  expect(pageStyle('A4', '')).toContain('size: 210mm 297mm'); // ISO 216
  expect(pageStyle('Letter', '')).toContain('size: 8.5in 11in'); // ANSI Y14.1, size A
});

it('lets no text out of its quotes', () => {
  expect(cssString('a"b\\c\n</style>')).toBe('"a\\22 b\\5c c\\a \\3c /style>"');
});
