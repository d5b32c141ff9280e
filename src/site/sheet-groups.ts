/** The steps of a sheet under their headings, with what can hurt told once, right before the work that first needs it. */
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

/** Steps in a row, of one part of the work or of several. */
export interface SheetRun {
  /** In full, those that nothing before on the sheet has told. */
  cautions: { title: string; text: string }[];
  steps: SheetStep[];
}

export interface SheetGroup {
  heading: string;
  /** Where another part of the work brings cautions that are new, it begins a new run. */
  runs: SheetRun[];
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
  let number = 0;
  const isDated = steps.some(({ date }) => date !== undefined);
  for (const part of partsOf(steps, (step) => headingOf(step, kind, machine, format, isDated))) {
    if (groups.at(-1)?.heading !== part.heading) groups.push({ heading: part.heading, runs: [] });
    const { runs } = groups.at(-1)!;
    const cautions = untold(part.steps, told);
    if (runs.length === 0 || cautions.length > 0) runs.push({ cautions, steps: [] });
    for (const step of part.steps) {
      number += 1;
      runs.at(-1)!.steps.push({ step, number, mind: mindOf(step, format), about: aboutOf(step, format) });
    }
  }
  return groups;
}

/** Steps in a row that stand under one heading and belong to one part of the work. */
function partsOf(
  steps: readonly PlanStep[],
  headingFor: (step: PlanStep) => string,
): { heading: string; part: string; steps: PlanStep[] }[] {
  const parts: { heading: string; part: string; steps: PlanStep[] }[] = [];
  for (const step of steps) {
    const heading = headingFor(step);
    const last = parts.at(-1);
    if (last?.heading === heading && last.part === step.part) last.steps.push(step);
    else parts.push({ heading, part: step.part, steps: [step] });
  }
  return parts;
}

/** The cautions of these steps that were not told yet; from here on they are. */
function untold(steps: readonly PlanStep[], told: Set<string>): SheetRun['cautions'] {
  const ids = new Set(steps.flatMap((step) => step.cautions).filter((id) => !told.has(id)));
  return [...ids].flatMap((id) => {
    told.add(id);
    const row = caution(id);
    return row ? [{ title: row.title, text: `${row.text} ${row.defer}` }] : [];
  });
}

function mindOf(step: PlanStep, format: Format): string[] {
  return step.cautions.map((id) => caution(id)?.title ?? format.fillIn(id, step.amounts).replace(/[.]$/, ''));
}

function headingOf(step: PlanStep, kind: SheetKind, machine: MachineKind, format: Format, isDated: boolean): string {
  if (step.stage === 'first-ride') return words.firstRide(machine);
  // What the lay-up left undone stands with the fluids.
  const stage = step.stage ?? (step.phase === 'lay-up' ? 'fluids' : undefined);
  if (kind === 'start-up') return stage ? WORDS.stages[stage] : words.allSteps;
  if (step.date) return format.dateText(step.date);
  return isDated ? words.withoutDay(step.latest && format.dateText(step.latest)) : words.allSteps;
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
