/**
 * The composition: Household -> SeasonPlan. Read this file first.
 *
 *   places      weather -> store air, metal, the cold to be survived      place-context.ts
 *   batteries   state of charge, charges shared into trips                battery/
 *   machines    fuel, coolant, tyres, corrosion, services, strip, steps   machine-plan.ts
 *   agenda      steps into sessions                                       household-agenda.ts, agenda/
 *   what if     the same with a later last day                            what-if.ts
 *   supplies, ledger, events, warnings
 *
 * Pure: the same household and the same day give the same plan, in the build, in the tests and in the page.
 */
import { taskKey } from './agenda/index.ts';
import { movesWork, visitMinutes } from './agenda-tasks.ts';
import { planBatteries, rankAssumptions } from './battery/index.ts';
import { later } from './dates.ts';
import { makeEvents } from './events/index.ts';
import type { Household, IsoDate, Machine } from './household.ts';
import { householdAgenda } from './household-agenda.ts';
import type { LedgerProblem } from './ledger/index.ts';
import { type DraftMachine, draftMachine } from './machine-plan.ts';
import { type PlaceContext, placeContext, placePlan } from './place-context.ts';
import { isChargeStep, withTickedBattery, withTickedCharges } from './recorded.ts';
import { datedSteps, layUpDays, startUpDays } from './season-days.ts';
import type { MachinePlan, PlanStep, SeasonPlan, Warning } from './season-plan.ts';
import { overdueWarnings, seasonWarnings } from './season-warnings.ts';
import {
  startUpChargeFrom,
  withoutStartUpChargeSteps,
  withoutStartUpCharges,
  withoutStartUpTrips,
} from './start-up-charge.ts';
import { orderWarnings, sumSupplies, supplyNeeds } from './supplies/index.ts';
import { inUnits } from './units/index.ts';
import { whatIfLater } from './what-if.ts';

export interface PlanOptions {
  /** The day the plan is made for. */
  asOf: IsoDate;
  /**
   * Leaves out the search for fewer sessions and the trials of a longer season: what a slider can do without between two
   * frames. With a machine named, that one alone is planned, in the hours that the others leave; charges share their trips.
   */
  quick?: boolean | Alone | undefined;
  /** Leaves out only what a longer season would cost, for a caller that works it out at the same time: `whatIfLater`. */
  withoutWhatIf?: boolean | undefined;
  /**
   * Of a part of a household: by machine, the day from which a charge is its start-up's own in the whole, whose sessions decide it.
   * A machine that is not in it has no such day.
   */
  chargedFrom?: Readonly<Record<string, IsoDate>> | undefined;
  /** Leaves out the reminders, for a page that shows none. */
  withoutReminders?: boolean | undefined;
}

/** A machine that is planned while the others keep their days. */
export interface Alone {
  machine: string;
  /** Hours that the others' work takes, by date [min]. */
  taken: ReadonlyMap<IsoDate, number>;
}

export interface PlanResult {
  plan: SeasonPlan;
  /** Items opened and never closed, steps in an unsafe order: with any of these the plan must not be used. */
  problems: LedgerProblem[];
}

/**
 * Plans a household's season.
 * @param asWritten - the household: validated, SI, defaults filled in
 * @param options - the day, and how much to try
 * @returns the plan, and what forbids its use
 */
export function planSeason(asWritten: Household, options: PlanOptions): PlanResult {
  const { asOf, quick = false, withoutWhatIf = quick !== false, withoutReminders = false } = options;
  const { procedures } = asWritten;
  const placeOf = ({ placeId }: Machine) => asWritten.places.find(({ id }) => id === placeId);
  const ticked = (m: Machine) => withTickedBattery(withTickedCharges(m, procedures), procedures, placeOf(m));
  const household = { ...asWritten, machines: asWritten.machines.map(ticked) };
  const places = new Map(household.places.map((place) => [place.id, placeContext(place, household.seed)]));
  const contextOf = (placeId: string): PlaceContext => {
    const context = places.get(placeId);
    if (!context)
      throw new RangeError(`found the place "${placeId}", expected one of ${[...places.keys()].join(', ')}`);
    return context;
  };

  const contexts = new Map(household.machines.map((machine) => [machine.id, contextOf(machine.placeId)]));
  const alone = typeof quick === 'object' ? quick : undefined;
  const batteries = planBatteries(household, asOf, contexts, alone?.machine);
  const planned = household.machines.filter((machine) => alone === undefined || machine.id === alone.machine);
  const drafts = planned.map((machine) =>
    draftMachine(machine, household, contexts.get(machine.id)!, batteries.plans.get(machine.id), asOf),
  );
  const busy = visitMinutes(drafts);
  for (const [date, minutes] of alone?.taken ?? []) busy.set(date, (busy.get(date) ?? 0) + minutes);

  const agenda = householdAgenda(drafts, household, { asOf, places: household.places, busy, quick: quick !== false });
  const dated = new Map(
    drafts.map((draft) => [
      draft.machine.id,
      datedSteps(draft, (step) => agenda.dateOf.get(taskKey(draft.machine.id, step)), asOf),
    ]),
  );
  const chargedFrom = new Map(
    [...dated].flatMap(([id, steps]) => {
      const from = options.chargedFrom ? options.chargedFrom[id] : startUpChargeFrom(steps);
      return from === undefined ? [] : [[id, from] as const];
    }),
  );
  const stepsOf = new Map(
    drafts.map(({ machine, battery }) => {
      const [steps, from] = [dated.get(machine.id)!, chargedFrom.get(machine.id)];
      const isCharge = ({ id }: PlanStep) => isChargeStep(id, procedures);
      return [machine.id, from === undefined ? steps : withoutStartUpChargeSteps(steps, from, battery, isCharge)];
    }),
  );
  const batteryOf = ({ machine, battery }: DraftMachine) => {
    const from = chargedFrom.get(machine.id);
    return battery && from !== undefined ? withoutStartUpCharges(battery, from) : battery;
  };

  const users = drafts.map(({ machine, strip }) => ({ machine, steps: stepsOf.get(machine.id)!, strip }));
  const supplies = sumSupplies(users, household);
  const warnings: Warning[] = [
    ...(household.doubts ?? []).map((doubt): Warning => ({ ...doubt, level: 'warning', about: 'content' })),
    ...batteries.warnings,
    ...drafts.flatMap((draft) => draft.warnings),
    ...agenda.notes,
    ...orderWarnings(supplyNeeds(users, household), asOf, {
      names: new Map(household.machines.map((m) => [m.id, m.name])),
      locale: household.locale,
    }),
    ...drafts.flatMap((draft) => [
      ...overdueWarnings(draft, stepsOf.get(draft.machine.id)!, asOf, household.locale),
      ...seasonWarnings(draft, stepsOf.get(draft.machine.id)!, asOf, household),
    ]),
  ].sort(bySeverity);
  const warningsOf = new Map<string | undefined, Warning[]>();
  for (const warning of warnings) {
    const own = warningsOf.get(warning.machine);
    if (own) own.push(warning);
    else warningsOf.set(warning.machine, [warning]);
  }

  const machines = drafts.map((draft, i): MachinePlan => {
    const { machine, rest } = draft;
    const steps = stepsOf.get(machine.id)!;
    return {
      id: machine.id,
      name: machine.name,
      kind: machine.kind,
      use: machine.use,
      place: machine.placeId,
      placeName: draft.context.place.name,
      spot: machine.spot,
      season: { ...machine.season, reasons: machine.season.reasons.map((r) => inUnits(r, household)) },
      layUp: layUpDays(draft, steps, asOf),
      startUp: startUpDays(draft, steps, asOf),
      firstFrostInStore: rest.firstFrost,
      battery: batteryOf(draft),
      driveBattery: draft.driveBattery,
      air: draft.air,
      corrosion: draft.corrosion,
      fuel: draft.fuel,
      coolant: draft.coolant,
      tyres: draft.tyres,
      services: draft.services,
      steps,
      strip: draft.strip,
      assumptions: rankAssumptions(machine, { ...draft.context, plan: draft.battery, asOf }, household),
      whatIf: withoutWhatIf || alone ? [] : whatIfLater(asWritten.machines[i]!, household, draft.context, asOf),
      warnings: warningsOf.get(machine.id) ?? [],
      paperwork: machine.paperwork,
      notes: [...machine.notes, ...draft.leftOut].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
    };
  });

  const { id, name, zone, locale, clock, country, siteUrl } = household;
  const moved = drafts.some((draft) => movesWork(draft, asOf));
  const revised = moved ? later(household.revised, `${asOf}T00:00:00Z`) : household.revised;
  const plan = {
    format: 1 as const,
    asOf,
    units: household.units,
    household: { id, name, zone, locale, clock, country, revised, siteUrl },
    places: household.places.map((place) => placePlan(contextOf(place.id))),
    machines,
    ledger: drafts.flatMap((draft) => draft.ledger),
    sessions: agenda.sessions,
    misfits: agenda.misfits,
    trips: withoutStartUpTrips(batteries.trips, chargedFrom),
    supplies,
    warnings: warnings.filter((warning) => warning.machine === undefined),
  };
  const events = withoutReminders ? [] : makeEvents(plan);
  return { plan: { ...plan, events }, problems: drafts.flatMap((draft) => draft.problems) };
}

const SEVERITY: readonly Warning['level'][] = ['danger', 'warning', 'note'];

function bySeverity(a: Warning, b: Warning): number {
  return SEVERITY.indexOf(a.level) - SEVERITY.indexOf(b.level);
}
