/** The steps of a sheet under their headings, with what can hurt told once at the head of the part that first needs it. */
import type { MachineKind } from '../planner/household.ts';
import type { PlanStep } from '../planner/season-plan.ts';
import { caution } from '../planner/tasks/cautions.ts';
import type { Format } from './formats.ts';
import type { SheetKind } from './sheet-lists.ts';
import { WORDS } from './words.ts';

export interface SheetStep {
  step: PlanStep;
  /** Runs through the whole sheet. */
  number: number;
  /** Short titles of its cautions, or the user's own words. */
  mind: string[];
  /** How long, and what it needs or waits for. */
  about: string[];
}

export interface SheetGroup {
  heading: string;
  /** In full, those that no earlier part of the sheet has told. */
  cautions: { title: string; text: string }[];
  steps: SheetStep[];
}

const words = WORDS.sheet;

/**
 * Parts a sheet: by stage at start-up, by day at lay-up.
 * @param steps - in the order of the sheet
 * @param kind - which sheet
 * @param machine - kind of machine: a mower is used, not ridden
 * @param format - the household's way of writing
 */
export function sheetGroups(
  steps: readonly PlanStep[],
  kind: SheetKind,
  machine: MachineKind,
  format: Format,
): SheetGroup[] {
  const groups: SheetGroup[] = [];
  const told = new Set<string>();
  steps.forEach((step, i) => {
    const heading = headingOf(step, kind, machine, format);
    if (groups.at(-1)?.heading !== heading) groups.push({ heading, cautions: [], steps: [] });
    const group = groups.at(-1)!;
    const mind = step.cautions.map((id) => {
      const row = caution(id);
      if (!row) return format.fillIn(id, step.amounts).replace(/[.]$/, '');
      if (!told.has(id)) group.cautions.push({ title: row.title, text: `${row.text} ${row.defer}` });
      told.add(id);
      return row.title;
    });
    group.steps.push({ step, number: i + 1, mind, about: aboutOf(step, format) });
  });
  return groups;
}

function headingOf(step: PlanStep, kind: SheetKind, machine: MachineKind, format: Format): string {
  if (step.stage === 'first-ride') return words.firstRide(machine);
  if (kind === 'start-up') return step.stage ? WORDS.stages[step.stage] : words.allSteps;
  return step.date ? format.dateText(step.date) : words.allSteps;
}

/** A figure stays on the line of its unit. */
const together = (text: string) => text.replaceAll(' ', '\u00a0');

/** Warm enough for water to run off and dry [°C]. */
const DRY_DAY_C = 5;

function aboutOf({ minutes, needs, waitH, done }: PlanStep, { duration, hours, amount }: Format): string[] {
  return [
    minutes > 0 && together(duration(minutes)),
    needs.dryDay && words.needs.dryDay(amount(DRY_DAY_C, '°C')),
    needs.warmEngine && words.needs.warmEngine,
    needs.stand && words.needs.stand,
    needs.charger && words.needs.charger,
    needs.bench && words.needs.bench,
    needs.power && words.needs.power,
    waitH > 0 && words.wait(together(hours(waitH))),
    done && words.done,
  ].filter((text): text is string => Boolean(text));
}
