/** The margins of printed pages, as a style text of their own. */
import { WORDS } from './words.ts';

/**
 * The style of printed pages: what they are above, page n of m below. A page without inline style can name its machine in
 * the margin only through a style file of its own.
 */
export function pageMargins(left: string, right: string, turn?: 'landscape'): string {
  const [page, of] = WORDS.sheet.pageOf;
  const face = 'font-family:sans-serif;font-size:11pt';
  return `@media print{@page{${turn ? `size:${turn};` : ''}margin:18mm 13mm 16mm;
@top-left{content:${quote(left)};${face};font-weight:600;vertical-align:bottom;padding-bottom:3mm}
@top-right{content:${quote(right)};${face};vertical-align:bottom;padding-bottom:3mm}
@bottom-left{content:${quote(WORDS.site)};${face};vertical-align:top;padding-top:3mm}
@bottom-right{content:${quote(`${page} `)} counter(page) ${quote(` ${of} `)} counter(pages);${face};vertical-align:top;padding-top:3mm}}}
`;
}

/** A CSS string: every character that could end it, or that is not plain, as an escape. */
function quote(text: string): string {
  const safe = text.replaceAll(/[^\p{L}\p{N} .,·–-]/gu, (c) => `\\${c.codePointAt(0)!.toString(16)} `);
  return `"${safe}"`;
}
