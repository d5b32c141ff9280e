/** What a printed sheet says besides its steps: tools and supplies laid out first, torques, and the margins of its pages. */
import type { MachinePlan, PlanStep, TorqueRow } from '../planner/season-plan.ts';
import { seasonName } from './format.ts';
import { season } from './season.ts';
import { WORDS } from './words.ts';

export type SheetKind = 'lay-up' | 'start-up';

/**
 * The steps of a sheet. Start-up in the order of the plan, which is the ledger's; lay-up by the days the agenda gave, since it
 * keeps the order of steps; a season swap belongs to the lay-up.
 */
export function sheetSteps(machine: MachinePlan, kind: SheetKind): PlanStep[] {
  const steps = machine.steps.filter((s) => s.phase === kind || (kind === 'lay-up' && s.phase === 'swap'));
  if (kind === 'start-up') return steps;
  const order = new Map(season.sessions.flatMap((s) => s.steps).map((s, i) => [`${s.machine}/${s.step}`, i]));
  const place = (step: PlanStep) => order.get(`${machine.id}/${step.id}`) ?? Number.MAX_SAFE_INTEGER;
  const day = (step: PlanStep) => step.date ?? '9999';
  return steps.sort((a, b) => (day(a) < day(b) ? -1 : day(a) > day(b) ? 1 : place(a) - place(b)));
}

/** Every tool once. */
export function toolsOf(steps: readonly PlanStep[]): string[] {
  return [...new Set(steps.flatMap((s) => s.tools))];
}

/** Supplies summed over steps. */
export function suppliesOf(steps: readonly PlanStep[]): { what: string; amount: number; unit: string }[] {
  const sums = new Map<string, { what: string; amount: number; unit: string }>();
  for (const supply of steps.flatMap((s) => s.supplies)) {
    const key = `${supply.what}\n${supply.unit}`;
    const sum = sums.get(key);
    if (sum) sum.amount += supply.amount;
    else sums.set(key, { ...supply });
  }
  return [...sums.values()];
}

/** Torque rows of the steps, each once. */
export function torquesOf(steps: readonly PlanStep[]): TorqueRow[] {
  return [...new Map(steps.flatMap((s) => s.torques).map((row) => [JSON.stringify(row), row])).values()];
}

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
