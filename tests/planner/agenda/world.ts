/** Invented tasks and households for the tests of the agenda. */
import { type Agenda, type AgendaTask, planAgenda, taskKey } from '../../../src/planner/agenda/index.ts';
import type { Household, Place, Weekday } from '../../../src/planner/household.ts';
import { household, place } from '../fluids/fixture.ts';

const NONE: Record<Weekday, number> = {
  monday: 0,
  tuesday: 0,
  wednesday: 0,
  thursday: 0,
  friday: 0,
  saturday: 0,
  sunday: 0,
};

/** A household with these hours, one pair of hands, one place without a way to it. */
export function yard(hours: Partial<Record<Weekday, number>>, over: Partial<Household> = {}): Household {
  return household({
    hoursByWeekday: { ...NONE, ...hours },
    places: [place({ tripMinutes: 0, bench: true })],
    stands: [{ id: 'stand', name: 'Stand', kinds: ['motorcycle'] }],
    chargers: [{ id: 'charger', name: 'Charger', currentA: 1, chemistries: ['agm'], maintainer: false }],
    ...over,
  });
}

const NO_NEEDS = { dryDay: false, warmEngine: false, stand: false, charger: false, bench: false, power: false };

type Over = Partial<Omit<AgendaTask, 'needs' | 'after'>> & { needs?: Partial<AgendaTask['needs']>; after?: string[] };

/** A step of Juniper, unless said otherwise; `after` names steps of the same machine. */
export function task(step: string, minutes: number, earliest: string, latest: string, over: Over = {}): AgendaTask {
  const machine = over.machine ?? 'juniper';
  return {
    title: `${machine}: ${step}`,
    phase: 'lay-up',
    part: step,
    work: step,
    placeId: 'shed',
    waitH: 0,
    kind: 'motorcycle',
    chemistry: 'agm',
    splittable: false,
    ...over,
    key: taskKey(machine, step),
    machine,
    step,
    minutes,
    earliest,
    latest,
    needs: { ...NO_NEEDS, ...over.needs },
    after: (over.after ?? []).map((id) => taskKey(machine, id)),
  };
}

export function plan(tasks: AgendaTask[], home: Household, places: Place[] = home.places): Agenda {
  return planAgenda({ tasks, household: home, asOf: '2026-10-01', places });
}

/** Dates of the sessions. */
export const datesOf = (agenda: Agenda): string[] => agenda.sessions.map((s) => s.date);
