import { dayIndexOf } from '../climate/index.ts';
import { addMonths, daysBetween, earlier, later } from '../dates.ts';
import type { Fuel, FuelChoice, IsoDate } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';
import type { Derivation, FuelPlan, Warning } from '../season-plan.ts';
import { windowsOf } from '../tasks/parts.ts';
import { formatQuantity, inUnits, type Reader } from '../units/index.ts';
import { keepingRow, useByWindow, verdictOn } from './age.ts';
import { cansFor } from './cans.ts';
import { adviseChoice, choiceFacts } from './choice.ts';
import {
  ageDerivation,
  choiceDerivation,
  doseDerivation,
  drainDerivations,
  limitDerivation,
  runDerivation,
} from './derivations.ts';
import type { FuelFacts, FuelInput, FuelStage } from './facts.ts';
import { FILL_SHARE, type FillAmounts, fillAmounts, usedDown } from './fill.ts';
import { localLimit } from './limits.ts';
import { restMeanC } from './store-mean.ts';
import { takersOf } from './takers.ts';
import { tapText } from './tap.ts';
import { warningsFor } from './warnings.ts';
import { waterPart } from './water-part.ts';

/** One part fuel of the lay-up to this many parts fresh makes fuel that has aged usable. */
const FRESH_PARTS = 2;

/**
 * Plans the fuel of one machine over its rest: drain, fill or leave, amounts, water, age, drained fuel.
 * @param input - machine, place, household, the store's normal year and its extremes over the rest
 * @returns the plan and its warnings; undefined for a machine without fuel
 * Source: each figure's derivation names its own.
 */
export function planFuel(input: FuelInput): { plan: FuelPlan; warnings: Warning[] } | undefined {
  const { machine, household, store } = input;
  const fuel = machine.fuel;
  if (!fuel || machine.engine.cycle === 'electric') return undefined;

  const { lastUse, firstUse } = machine.season;
  const restDays = daysBetween(lastUse, firstUse);
  const dose = household.fuelCare.stabiliserDoseMLPerL;
  const meanC = restMeanC(store, lastUse, firstUse);
  const untreated = keepingRow('tank-untreated');
  const decidedFrom = choiceFacts(machine, {
    restDays,
    stabiliser: dose !== undefined,
    untreated: verdictOn(firstUse, useByWindow(lastUse, untreated, meanC)),
  });
  const advised = adviseChoice(decidedFrom);
  const choice = fuel.choice ?? advised.choice;
  const reason =
    fuel.choice === undefined
      ? advised.reason
      : fuel.choice === advised.choice
        ? `Chosen by you. ${advised.reason}`
        : `Chosen by you; without a choice it would be "${advised.choice}": ${advised.reason}`;

  const short = restDays < SHORT_REST_DAYS;
  const fillC = store.dayMeanC[dayIndexOf(lastUse)]!;
  const isFilled = choice === 'fill' && !short;
  const inTank =
    choice === 'drain'
      ? undefined
      : fillAmounts(
          choice === 'leave' && !short ? usedDown(fuel) : fuel,
          fillC,
          input.highestStoreC,
          isFilled ? FILL_SHARE : 0,
        );
  const bought = ageFrom(fuel, lastUse, inTank);
  const bare = useByWindow(bought, untreated, meanC);
  const stage = stageOf(input, choice);
  // What nobody ticked before the start-up began is not taken for treated.
  const isPast = stage === 'resting' && input.doneOn === undefined;
  const treated = isFilled && dose !== undefined && !isPast && verdictOn(firstUse, bare) !== 'use';

  const row = inTank ? (treated ? keepingRow('tank-treated') : untreated) : keepingRow('can');
  const window = useByWindow(bought, row, meanC);

  const levelL = inTank?.levelL ?? 0;
  const drainedL = inTank ? undefined : drainedLitres(fuel);
  const drainedOn = drainingDay(input);
  const monthOn = addMonths(drainedOn, 1);
  // Late in the rest it has stood untreated: what is stale before the month to use it up is over is not kept for that.
  const isLate = drainedOn > windowsOf(machine.season).layUpEnd;
  const isOld = drainedOn > window.latest || (isLate && verdictOn(monthOn, bare) === 'dispose');
  const drainedUseBy = inTank || isPast ? undefined : isOld ? monthOn : earlier(monthOn, window.latest);
  const lasts = !isOld && drainedUseBy !== undefined && firstUse <= drainedUseBy;
  const verdict = inTank ? verdictOn(later(firstUse, input.seenTo ?? input.asOf), window) : lasts ? 'use' : 'dispose';
  const takers = drainedUseBy ? takersOf(machine, household, drainedOn, drainedUseBy) : [];
  const cans = drainedL === undefined ? undefined : cansFor(drainedL, household.fuelCare.canL);
  const limit = localLimit(household.country, drainedL, household);
  const water = waterPart({ ...input, fuel, levelL });
  const runMinutes =
    treated && machine.engine.idleFlowLPerH > 0 ? (60 * fuel.lineAndBowlsL) / machine.engine.idleFlowLPerH : undefined;
  const doseML = treated ? levelL * dose! : undefined;

  const plan: FuelPlan = {
    choice,
    reason,
    settled: stage === 'before' || stage === 'lay-up' ? undefined : input.doneOn ? 'done' : 'past',
    levelL,
    addL: inTank?.addL,
    drawOffL: inTank?.drawOffL || undefined,
    doseML,
    runMinutes,
    drainedL,
    cans,
    waterToleranceML: water.toleranceML,
    breathingWaterML: water.breathingML,
    fullAtHottestPct: inTank?.fullAtHottestPct ?? 0,
    useBy: window,
    drainedUseBy,
    drainedOld: drainedUseBy !== undefined && isOld ? true : undefined,
    atFirstUse: { verdict, text: verdictText(verdict, inTank && { tankL: fuel.tankL, levelL }, household) },
    tap: tapText(fuel, choice, restDays),
    localLimit: { where: limit.where, text: limit.text, exceeded: limit.exceeded },
    derivations: [],
  };
  const facts: FuelFacts = {
    ...input,
    fuel,
    restDays,
    advised,
    stage,
    amounts: inTank,
    takers,
    bought,
    fillsWithDose: adviseChoice({ ...decidedFrom, stabiliser: true }).choice === 'fill',
    untreatedNow: verdictOn(input.asOf, bare),
  };
  const derivations: Derivation[] = [
    choiceDerivation(facts, choice),
    ...(inTank?.derivations ?? []),
    ...(doseML === undefined ? [] : [doseDerivation(levelL, dose!, doseML, fuel.premix)]),
    ...(runMinutes === undefined ? [] : [runDerivation(fuel, machine.engine.idleFlowLPerH, runMinutes)]),
    ...(drainedL === undefined ? [] : drainDerivations(fuel, household, drainedL, cans!, drainedUseBy)),
    ...water.derivations,
    ageDerivation(row, bought, meanC, plan, firstUse, household.locale),
    limitDerivation(limit, household.country, drainedL),
  ];
  plan.derivations = derivations.map((d) =>
    d.caveat === undefined ? d : { ...d, caveat: inUnits(d.caveat, household) },
  );
  return { plan, warnings: warningsFor(plan, facts) };
}

/**
 * What is ticked is done; what nobody ticked has a use until the start-up begins. Petrol that stood is a matter of the rest until the
 * start-up is ticked; petrol that was drained is none from the first use on.
 */
function stageOf({ machine: { season }, asOf, doneOn, seenTo }: FuelInput, choice: FuelChoice): FuelStage {
  if (seenTo !== undefined || (choice === 'drain' && asOf >= season.firstUse)) return 'over';
  if (doneOn !== undefined || asOf > windowsOf(season).startUpFrom) return 'resting';
  return asOf > season.lastUse ? 'lay-up' : 'before';
}

/** The day on which the tank is drained: the ticked one, today where the lay-up's days are over and it is still to be done. */
function drainingDay({ machine: { season }, asOf, doneOn }: FuelInput): IsoDate {
  if (doneOn !== undefined) return later(season.lastUse, doneOn);
  return asOf > windowsOf(season).layUpEnd ? asOf : season.lastUse;
}

/** Fuel counts as fresh on the fill day where at least two parts fresh go on one part old. */
function ageFrom(fuel: Fuel, lastUse: IsoDate, inTank: FillAmounts | undefined): IsoDate {
  const oldL = (inTank?.levelL ?? 0) - (inTank?.addL ?? 0);
  if (inTank && inTank.addL >= FRESH_PARTS * oldL) return lastUse;
  return fuel.boughtOn ?? lastUse;
}

function drainedLitres(fuel: Fuel): number {
  return fuel.inTankL.value + (fuel.delivery === 'carburettor' ? fuel.lineAndBowlsL : 0);
}

function verdictText(
  verdict: 'use' | 'mix' | 'dispose',
  inTank: { tankL: number; levelL: number } | undefined,
  reader: Reader,
): string {
  const away = 'the local collection point, never onto the ground or into a drain';
  if (inTank === undefined)
    return verdict === 'use'
      ? 'Fill with fresh fuel. What is left in the cans is within its age: use it.'
      : `Fill with fresh fuel. What was drained is not kept for it: what is left of it goes to ${away}.`;
  return {
    use: 'Within its age, use it.',
    mix: `Past its surest age. Clear and not sour, it can be used mixed with at least ${FRESH_PARTS} parts fresh fuel: ${mixing(inTank, reader)}`,
    dispose: `Too old: drain the tank, take the fuel to ${away}, and fill with fresh.`,
  }[verdict];
}

/** How old fuel comes under enough fresh in its own tank. */
function mixing({ tankL, levelL }: { tankL: number; levelL: number }, reader: Reader): string {
  const q = (litres: number) => formatQuantity(litres, 'L', reader);
  const mostL = Math.max(levelL, FILL_SHARE * tankL) / (1 + FRESH_PARTS);
  return levelL > mostL
    ? `draw the tank down to ${q(mostL)} and fill up; what is drawn off goes into other engines the same way.`
    : `fill in ${q(FRESH_PARTS * levelL)} or more.`;
}
