import { restKey } from '../rest-key.ts';
import type { EventCategory, MachinePlan, PlanEvent, PlanStep, SeasonPlan } from '../season-plan.ts';
import type { KeyPart } from './identity.ts';

/** The plan as it stands before its reminders are made. */
export type PlanWithoutEvents = Omit<SeasonPlan, 'events'>;

/** A reminder with the key of its identity instead of the UID made from it. */
export interface Draft {
  key: KeyPart[];
  event: Omit<PlanEvent, 'uid'>;
}

interface PhaseRow {
  /** What its reminders are filed under. */
  category: EventCategory;
  word: string;
  act: (name: string) => string;
  /** Page below the machine's own. */
  page: string;
}

export const PHASES: Record<PlanStep['phase'], PhaseRow> = {
  'lay-up': { category: 'lay-up', word: 'lay-up', act: (name) => `Lay up ${name}`, page: 'lay-up/' },
  'look-in': { category: 'look-in', word: 'look-ins', act: (name) => `Look in on ${name}`, page: '' },
  winter: { category: 'winter', word: 'winter work', act: (name) => `Winter work on ${name}`, page: '' },
  'start-up': { category: 'start-up', word: 'start-up', act: (name) => `Start up ${name}`, page: 'start-up/' },
  swap: { category: 'lay-up', word: 'season swap', act: (name) => `Swap seasons with ${name}`, page: '' },
};

/** Path of a machine's page, or of one of its sheets. */
export const machinePath = (machine: { id: string }, page = '') => `/machines/${machine.id}/${page}`;

/** A draft about one machine, keyed by household, machine and rest. */
export function machineDraft(
  plan: PlanWithoutEvents,
  machine: MachinePlan,
  key: readonly KeyPart[],
  event: Omit<PlanEvent, 'uid' | 'machine' | 'machines' | 'path'> & { path?: string },
): Draft {
  return {
    key: [plan.household.id, machine.id, restKey(machine.season), ...key],
    event: { path: machinePath(machine), ...event, machine: machine.id, machines: [machine.id] },
  };
}
