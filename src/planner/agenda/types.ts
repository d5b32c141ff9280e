import type { BatteryChemistry, IsoDate, MachineKind } from '../household.ts';
import type { Misfit, PlanStep, Session, Warning } from '../season-plan.ts';

/** One step as the agenda sees it. */
export interface AgendaTask {
  /** `taskKey(machine, step)`. */
  key: string;
  machine: string;
  step: string;
  /** Machine and step in words, for messages: "Juniper: wash and dry". */
  title: string;
  phase: PlanStep['phase'];
  /** What of its phase it belongs to, and what it is, in words. */
  part: string;
  work: string;
  placeId: string;
  /** Time of one pair of hands [min]. */
  minutes: number;
  /** Time that must pass before a step that follows it [h]; a charger it needs stays taken for as long. */
  waitH: number;
  /** Keys of tasks that come first; keys of tasks that are not in the agenda are left out of account. */
  after: string[];
  /** Time that must pass at the least after all that it follows [h]. */
  behindH?: number | undefined;
  /** Key of the task that it goes on from without a break. */
  goesOnFrom?: string | undefined;
  /** First and last day on which it may be done, both included. */
  earliest: IsoDate;
  latest: IsoDate;
  needs: PlanStep['needs'];
  /** Decides which stands carry it. */
  kind: MachineKind;
  /** Decides which chargers suit it; undefined takes any. */
  chemistry?: BatteryChemistry | undefined;
  /** May be spread over several sessions where it is longer than any one session. */
  splittable: boolean;
}

export interface Agenda {
  sessions: Session[];
  misfits: Misfit[];
  /** First day of each task that found one, by key. */
  dateOf: Map<string, IsoDate>;
  /** What the agenda took for granted: a dry day in a wet month, a stand that is not there. */
  notes: Warning[];
}

/** Key of a machine's step. */
export function taskKey(machine: string, step: string): string {
  return `${machine}/${step}`;
}
