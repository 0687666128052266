/** The two sizes of paper a shop has. */
export type Paper = 'A4' | 'Letter';

/** A text as a CSS string: quotes and backslashes escaped, line ends and `<` written as code points. */
export const cssString = (text: string): string =>
  `"${text.replace(/["\\<\n\r\f]/g, (c) => `\\${c.charCodeAt(0).toString(16)} `)}"`;

/** The `@page` rule: size, margins, a running foot and page numbers. */
export function pageStyle(paper: Paper, foot: string): string {
  const size = paper === 'A4' ? '210mm 297mm' : '8.5in 11in';
  const text = 'font: 7.5pt "Atkinson Next", sans-serif; color: #333;';
  return `@page {
  size: ${size};
  margin: 12mm 13mm 14mm;
  @bottom-left { content: ${cssString(foot)}; ${text} }
  @bottom-right { content: "page " counter(page) " of " counter(pages); ${text} }
}`;
}
