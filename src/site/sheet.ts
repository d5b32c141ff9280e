/** What a printed sheet says besides its steps: tools and supplies laid out first, torques, and the margins of its pages. */
import type { MachinePlan, PlanStep } from '../planner/season-plan.ts';
import { seasonName } from './format.ts';
import { season } from './season.ts';
import { type SheetKind, stepsOfSheet } from './sheet-lists.ts';
import { WORDS } from './words.ts';

export { type SheetKind, suppliesOf, toolsOf, torquesOf } from './sheet-lists.ts';

/** The steps of a sheet of this site's plan. */
export const sheetSteps = (machine: MachinePlan, kind: SheetKind): PlanStep[] =>
  stepsOfSheet(machine, kind, season.sessions);

/** The margins of one sheet: machine, sheet and season. */
export function marginStyle(machine: MachinePlan, kind: SheetKind): string {
  const title = kind === 'lay-up' ? WORDS.sheet.layUp : WORDS.sheet.startUp;
  const name = WORDS.sheet.season(seasonName(machine.layUp.start, machine.startUp.firstUse));
  return pageMargins(`${machine.name} · ${title}`, name);
}

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
