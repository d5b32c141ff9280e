/** What a printed sheet says besides its steps: tools and supplies laid out first, torques, and the margins of its pages. */
import type { MachinePlan, PlanStep } from '../planner/season-plan.ts';
import { seasonName } from './format.ts';
import { pageMargins } from './page-margins.ts';
import { season } from './season.ts';
import { type SheetKind, stepsOfSheet } from './sheet-lists.ts';
import { WORDS } from './words.ts';

export { openOfSheet, type SheetKind, suppliesOf, toolsOf, torquesOf } from './sheet-lists.ts';

/** The steps of a sheet of this site's plan. */
export const sheetSteps = (machine: MachinePlan, kind: SheetKind): PlanStep[] =>
  stepsOfSheet(machine, kind, season.sessions);

/** The margins of one sheet: machine, sheet and season. */
export function marginStyle(machine: MachinePlan, kind: SheetKind): string {
  const title = kind === 'lay-up' ? WORDS.sheet.layUp : WORDS.sheet.startUp;
  const name = WORDS.sheet.season(seasonName(machine.layUp.start, machine.startUp.firstUse));
  return pageMargins(`${machine.name} · ${title}`, name);
}

export { pageMargins } from './page-margins.ts';
