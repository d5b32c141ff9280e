/** Cautions of steps: a row of the table by its id, or the plan's own words. */
import type { PlanStep } from '../planner/season-plan.ts';
import { CAUTIONS } from '../planner/tasks/cautions.ts';

const rows = new Map(CAUTIONS.map((row) => [row.id, row]));

/** What a step says about one danger: in full where the sheet names it first, by its title afterwards. */
export interface StepCaution {
  title: string;
  text: string;
  /** Number of the step where it stands in full; undefined when that is here. */
  seen?: number | undefined;
}

/**
 * The cautions of each step of a sheet.
 * @param steps - in the order of the sheet
 * @returns one list for each step
 */
export function cautionsOf(steps: readonly PlanStep[]): StepCaution[][] {
  const seen = new Map<string, number>();
  return steps.map((step, i) =>
    step.cautions.map((id) => {
      const row = rows.get(id);
      if (!row) return { title: '', text: id };
      const first = seen.get(id);
      if (first === undefined) seen.set(id, i + 1);
      return { title: row.title, text: `${row.text} ${row.defer}`, seen: first };
    }),
  );
}
