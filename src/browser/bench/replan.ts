/** One machine planned anew with what the bench records of its device hold: what its pages then show. */
import { type BenchRecord, withRecords } from '../../planner/bench-record.ts';
import { later } from '../../planner/dates.ts';
import type { Household, IsoDate } from '../../planner/household.ts';
import { planSeason } from '../../planner/plan.ts';
import type { MachinePlan, PlanStep, SeasonPlan } from '../../planner/season-plan.ts';
import type { Format } from '../../site/formats.ts';
import { restSteps, stepsOfSheet } from '../../site/sheet-lists.ts';
import { battery } from '../../site/show/battery.ts';
import { datesList, numbersList } from '../../site/show/dates.ts';
import { section, warningList } from '../../site/show/parts.ts';
import { type Showing, showingOf } from '../../site/show/showing.ts';
import { unsure } from '../../site/show/unsure.ts';
import { WORDS } from '../../site/words.ts';

/** Which steps stand on a page. */
export type StepList = 'lay-up' | 'start-up' | 'rest';

export interface ShownStep {
  id: string;
  title: string;
  /** Its day as the page prints it; empty where it has none. */
  day: string;
  date?: IsoDate | undefined;
  /** Ticked, or a reading of the record stands for it. */
  done: boolean;
}

export interface Replanned {
  /** Markup of a machine's page: of sections by the id of their heading, of lists by their class. Empty: there is none. */
  sections: Record<string, string>;
  lists: Record<string, string>;
  steps: Record<StepList, ShownStep[]>;
  /** Days of the charges, the next first. */
  charges: IsoDate[];
  /** By machine, the next charge of those that were planned. */
  next: Record<string, NextCharge>;
}

/** What other pages say of a machine whose charge has moved. */
export interface NextCharge {
  name: string;
  /** Empty where no charge is needed before start-up. */
  date: IsoDate | '';
  /** The same as the pages print it. */
  said: string;
}

export interface Replanning {
  machine: string;
  /** The device's records by machine. */
  records: Record<string, BenchRecord>;
  asOf: IsoDate;
  /** This instant: what calendars take for the last change. */
  now: string;
}

/**
 * Plans a household with the records of a device beside those of its content.
 * @param household - as the build published it, with its procedures
 * @param replanning - the records, the machine that is shown, and the day
 * @param whole - false where machines are left out: the days of sessions are then not those of the household
 * @param methods - names of the calculations
 * @param chargedFrom - where machines are left out: as `planSeason` takes it
 */
export function replan(
  household: Household,
  { machine: id, records, asOf, now }: Replanning,
  whole: boolean,
  methods: Readonly<Record<string, string>>,
  chargedFrom?: Readonly<Record<string, IsoDate>>,
): { plan: SeasonPlan; shown: Replanned } {
  const machines = household.machines.map((m) => {
    const record = records[m.id];
    return record ? withRecords(m, [record]) : m;
  });
  const { plan } = planSeason(
    { ...household, machines, revised: later(household.revised, now) },
    { asOf, chargedFrom },
  );
  const machine = plan.machines.find((m) => m.id === id);
  if (!machine) throw new RangeError(`found no machine "${id}", expected one of ${plan.machines.map((m) => m.id)}`);
  const showing = showingOf(plan, machine, methods);
  const { format } = showing;
  const charges = (machine.battery?.charges ?? []).map((c) => c.date);
  return {
    plan,
    shown: {
      sections: { battery: battery(showing).text, ...(whole ? wholeSections(showing) : {}) },
      lists: {
        numbers: numbersList(machine, format).text,
        ...(whole ? { dates: datesList(machine, format).text } : {}),
      },
      steps: {
        'lay-up': whole ? stepsOfSheet(machine, 'lay-up', plan.sessions).map((s) => shownStep(s, format)) : [],
        'start-up': whole ? stepsOfSheet(machine, 'start-up', plan.sessions).map((s) => shownStep(s, format)) : [],
        // Look-ins have days of their own; winter work has those of its sessions.
        rest: restSteps(machine, asOf)
          .filter(({ phase }) => whole || phase === 'look-in')
          .map((s) => shownStep(s, format)),
      },
      charges,
      // Of a part of the household, the trips of the other machines are not known whole.
      next: Object.fromEntries((whole ? plan.machines : [machine]).map((m) => [m.id, nextCharge(m, asOf, format)])),
    },
  };
}

/** What sessions and other machines have a part in. */
function wholeSections(showing: Showing): Record<string, string> {
  const { warnings } = showing.machine;
  return {
    warnings: warnings.length > 0 ? section('warnings', WORDS.machine.warnings, warningList(warnings)).text : '',
    // Both parts come with the first.
    longer: '',
    assumed: unsure(showing).text,
  };
}

function nextCharge({ name, battery }: MachinePlan, asOf: IsoDate, { plainDate }: Format): NextCharge {
  const charge = battery?.charges.find(({ date }) => date >= asOf);
  const date = charge?.date ?? battery?.chargeWithoutDay ?? '';
  const since = charge?.overdue ? `, ${WORDS.agenda.overdue(plainDate(charge.earliest))}` : '';
  return { name, date, said: date === '' ? '' : `${plainDate(date)}${since}` };
}

function shownStep({ id, title, amounts, date, done }: PlanStep, format: Format): ShownStep {
  return {
    id,
    title: format.fillIn(title, amounts),
    day: date === undefined ? '' : format.plainDate(date),
    date,
    done,
  };
}
