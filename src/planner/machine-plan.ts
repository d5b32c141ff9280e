/** One machine's part of the plan, before the agenda gives days to its steps. */
import { dewPointC, monthMeansOfHours } from './climate/index.ts';
import { planCoolant } from './coolant/index.ts';
import { planCorrosion } from './corrosion/index.ts';
import { addDays } from './dates.ts';
import { planDriveBattery } from './drive-battery/index.ts';
import { engineWarnings } from './engine-warnings.ts';
import { dueServices } from './fluids/index.ts';
import { planFuel } from './fuel/index.ts';
import type { Household, IsoDate, Job, Machine, Place } from './household.ts';
import { buildLedger, type LedgerProblem, settleSteps } from './ledger/index.ts';
import type { PlaceContext } from './place-context.ts';
import {
  isBagLeftOut,
  isRinseAhead,
  laidUpOn,
  laterSeasonWarnings,
  leftOutNotes,
  ofThisSeason,
  petrolSeenToOn,
  recordWarnings,
  withOpened,
  withoutRefitted,
  withSoundSkips,
} from './recorded.ts';
import { type Rest, restOf } from './rest.ts';
import type {
  AirPlan,
  BatteryPlan,
  CoolantPlan,
  CorrosionPlan,
  DriveBatteryPlan,
  FuelPlan,
  LedgerItem,
  PlanStep,
  ServiceDue,
  StripPlan,
  TyrePlan,
  Warning,
} from './season-plan.ts';
import { usualLowC } from './storage/index.ts';
import { planStrip, refitSteps, winterSteps } from './strip/index.ts';
import { concreteSteps, windowsOf } from './tasks/index.ts';
import { planTyres } from './tyres/index.ts';

export interface DraftMachine {
  machine: Machine;
  context: PlaceContext;
  rest: Rest;
  battery?: BatteryPlan | undefined;
  driveBattery?: DriveBatteryPlan | undefined;
  air: AirPlan;
  corrosion: CorrosionPlan;
  fuel?: FuelPlan | undefined;
  coolant?: CoolantPlan | undefined;
  tyres: TyrePlan[];
  services: ServiceDue[];
  strip?: StripPlan | undefined;
  steps: PlanStep[];
  ledger: LedgerItem[];
  problems: LedgerProblem[];
  warnings: Warning[];
  /** What was left out on purpose, in words. */
  leftOut: { date: IsoDate; text: string }[];
}

/**
 * Works out one machine in its place.
 * @param asWritten - the machine
 * @param household - whose machine it is, with its procedures
 * @param context - what the weather makes of its place
 * @param battery - its battery's plan, made with those of the other machines since charges share trips
 * @param asOf - the day the plan is made for
 */
export function draftMachine(
  asWritten: Machine,
  household: Household,
  context: PlaceContext,
  battery: BatteryPlan | undefined,
  asOf: IsoDate,
): DraftMachine {
  const { place, store } = context;
  const services = dueServices(asWritten, asOf, household);
  const withJobs = withServiceJobs(ofThisSeason(asWritten, household.procedures), services);
  const { strip } = planStrip(withJobs);
  const machine = withoutRefitted(withJobs, strip);
  const rest = restOf(machine.season, context);
  const storeAir = context.airFor(machine.kind);
  const warnings: Warning[] = engineWarnings(machine);
  const take = <P>(part: { plan: P; warnings: Warning[] } | undefined): P | undefined => {
    warnings.push(...(part?.warnings ?? []));
    return part?.plan;
  };

  const tickedOn = (amounts: string[]) => laidUpOn(machine, household.procedures, amounts);
  const isTicked = (amounts: string[]) => tickedOn(amounts) !== undefined;
  const air = airOf(context, machine, rest);
  const driveBattery = take(planDriveBattery({ machine, place, household, designLowC: rest.designLowC }));
  const fuel = take(
    planFuel({
      machine,
      place,
      household,
      store,
      lowestStoreC: air.lowestC,
      highestStoreC: air.highestC,
      asOf,
      doneOn: tickedOn(['addFuel', 'planFuel', 'drained', 'lowFuel']),
      usedUp: isTicked(['drainedUseBy']),
      seenTo: petrolSeenToOn(machine, household.procedures),
    }),
  );
  const coolant = take(
    planCoolant({
      machine,
      place,
      household,
      rest,
      ahead: aheadOf(rest, machine, context, asOf),
      asOf,
      tested: isTicked(['coolantNeed']),
      strengthened: isTicked(['coolantSwap']),
    }),
  );
  const tyres = take(planTyres({ machine, place, store, household })) ?? [];
  const corrosion = take(
    planCorrosion({
      machine,
      place,
      airMonths: storeAir.months,
      restMonths: rest.months,
      annualMeanC: storeAir.year.meanC,
      annualMeanRhPct: storeAir.year.meanRhPct,
      rinseAhead: isRinseAhead(machine, household.procedures, asOf),
      withoutBag: whyNoBag(machine, household, place, battery),
    }),
  )!;

  const hasStrip = strip.off.length > 0 || strip.jobs.length > 0;
  const parts = { battery, driveBattery, fuel, coolant, tyres, corrosion, services, firstFrost: rest.firstFrost };
  const all = [
    ...concreteSteps({ machine, place, household, parts, procedures: household.procedures }),
    ...winterSteps(machine, strip, household),
    ...refitSteps(machine, strip),
  ];
  const kept = withOpened(withSoundSkips(machine, all), all, household.procedures);
  warnings.push(...laterSeasonWarnings(asWritten), ...recordWarnings(machine, all, household.procedures));
  const steps = settleSteps(kept, all);
  const ledger = buildLedger(kept, steps, household.procedures);

  return {
    machine,
    context,
    rest,
    battery,
    driveBattery,
    air,
    corrosion,
    fuel,
    coolant,
    tyres,
    services,
    strip: hasStrip ? strip : undefined,
    steps,
    ledger: ledger.items,
    problems: ledger.problems,
    warnings,
    leftOut: leftOutNotes(kept, all),
  };
}

/** Why the machine is not to be closed in a bag; undefined where it may. */
function whyNoBag(
  machine: Machine,
  { procedures }: Household,
  { power }: Place,
  battery: BatteryPlan | undefined,
): string | undefined {
  if (isBagLeftOut(machine, procedures)) return 'the closed bag is left out on purpose';
  // Common practice: nothing is charged where its gas stays.
  return power && battery?.care === 'maintainer' && battery.keptAt === 'machine'
    ? 'no closed bag around a battery on its maintainer: the gas would stay in it'
    : undefined;
}

/** What is left of the rest on a day within it; before it, all of it; after it, what is left until the season is given up. */
function aheadOf(rest: Rest, { season }: Machine, context: PlaceContext, asOf: IsoDate): Rest {
  const { lastUse, firstUse, rideEnd } = windowsOf(season);
  if (asOf <= lastUse || asOf > rideEnd) return rest;
  return restOf({ ...season, lastUse: asOf, firstUse: asOf < firstUse ? firstUse : addDays(rideEnd, 1) }, context);
}

/** A service that is due and needs something off is a job like any other, so that it shares the strip-down. */
function withServiceJobs(machine: Machine, due: readonly ServiceDue[]): Machine {
  const jobs = machine.services
    .filter((item) => item.assemblies.length > 0 && due.some(({ id, pulledIn }) => id === item.id && pulledIn))
    .filter((item) => machine.jobs.every((job) => job.id !== item.id))
    .map(
      (item): Job => ({
        id: item.id,
        name: item.what,
        assemblies: item.assemblies,
        minutes: item.minutes,
        parts: item.supplies,
        tools: [],
        cautions: [],
        notes: [],
        after: [],
        needs: { stand: false, bench: false },
        done: false,
      }),
    );
  return jobs.length === 0 ? machine : { ...machine, jobs: [...machine.jobs, ...jobs] };
}

function airOf(context: PlaceContext, machine: Machine, rest: Rest): AirPlan {
  const air = context.airFor(machine.kind);
  const { sayable } = air;
  const vapourPa = monthMeansOfHours(context.store.vapourPa);
  // A record, where one is given, is known; what the drawn years bring is not.
  const lowestC = Math.max(usualLowC(air, rest.months), rest.designLowC);
  return {
    months: rest.months.map((month) => {
      const figures = air.months[month - 1]!;
      return {
        month,
        meanC: figures.meanC,
        dewPointC: dewPointC(vapourPa[month - 1]!),
        meanRhPct: figures.meanRhPct,
        condensationHours: sayable.condensation ? figures.condensationHours : null,
        condensationHoursP90: sayable.condensation ? figures.condensationHoursP90 : null,
        frostHours: sayable.frost ? figures.frostHours : null,
        frostHoursP90: sayable.frost ? figures.frostHoursP90 : null,
        wetHours: figures.wetHours,
        wetHoursP90: figures.wetHoursP90,
      };
    }),
    condensationSayable: sayable.condensation,
    frostSayable: sayable.frost,
    typicalFactor: sayable.typicalFactor,
    why: sayable.why === '' ? undefined : sayable.why,
    lowestC,
    // A store that is held at one temperature has the same high and low, by two ways of reckoning.
    highestC: Math.max(lowestC, ...rest.months.map((month) => air.highestC[month - 1]!)),
    reckonedLowC: rest.designLowC,
  };
}
