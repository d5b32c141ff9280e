import { dayIndexOf } from '../climate/index.ts';
import { addMonths, daysBetween, earlier, later } from '../dates.ts';
import type { Fuel, Household, IsoDate } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';
import type { Derivation, FuelPlan, Warning } from '../season-plan.ts';
import { formatQuantity, inUnits } from '../units/index.ts';
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
import type { FuelFacts, FuelInput } from './facts.ts';
import { FILL_SHARE, type FillAmounts, fillAmounts } from './fill.ts';
import { localLimit } from './limits.ts';
import { restMeanC } from './store-mean.ts';
import { takersOf } from './takers.ts';
import { tapText } from './tap.ts';
import { warningsFor } from './warnings.ts';
import { waterPart } from './water-part.ts';

/** One part fuel of the lay-up to this many parts fresh makes fuel that has aged usable. */
const FRESH_PARTS = 2;

/**
 * Plans the fuel of one machine over its rest: drain or fill, amounts, water, age, drained fuel.
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
  const advised = adviseChoice(choiceFacts(machine, restDays, dose !== undefined));
  const choice = fuel.choice ?? advised.choice;
  const reason =
    fuel.choice === undefined
      ? advised.reason
      : fuel.choice === advised.choice
        ? `Chosen by you. ${advised.reason}`
        : `Chosen by you; without a choice it would be "${advised.choice}": ${advised.reason}`;

  const short = restDays < SHORT_REST_DAYS;
  const meanC = restMeanC(store, lastUse, firstUse);
  const fillC = store.dayMeanC[dayIndexOf(lastUse)]!;
  const filled = choice === 'fill' ? fillAmounts(fuel, fillC, input.highestStoreC, short ? 0 : FILL_SHARE) : undefined;
  const bought = ageFrom(fuel, lastUse, filled);
  const bare = useByWindow(bought, keepingRow('tank-untreated'), meanC);
  const treated = filled !== undefined && !short && dose !== undefined && verdictOn(firstUse, bare) !== 'use';

  const row = keepingRow(filled ? (treated ? 'tank-treated' : 'tank-untreated') : 'can');
  const window = useByWindow(bought, row, meanC);
  const verdict = verdictOn(firstUse, window);

  const drainedL = filled ? undefined : drainedLitres(fuel);
  const drainedUseBy = filled ? undefined : later(lastUse, earlier(addMonths(lastUse, 1), window.latest));
  const takers = drainedUseBy ? takersOf(machine, household, lastUse, drainedUseBy) : [];
  const cans = drainedL === undefined ? undefined : cansFor(drainedL, household.fuelCare.canL);
  const limit = localLimit(household.country, drainedL, household.units);
  const water = waterPart({ ...input, fuel, levelL: filled?.levelL ?? 0 });
  const runMinutes =
    treated && machine.engine.idleFlowLPerH > 0 ? (60 * fuel.lineAndBowlsL) / machine.engine.idleFlowLPerH : undefined;
  const doseML = treated ? filled!.levelL * dose! : undefined;

  const plan: FuelPlan = {
    choice,
    reason,
    addL: filled?.addL,
    doseML,
    runMinutes,
    drainedL,
    cans,
    waterToleranceML: water.toleranceML,
    breathingWaterML: water.breathingML,
    fullAtHottestPct: filled?.fullAtHottestPct ?? 0,
    useBy: window,
    drainedUseBy,
    atFirstUse: { verdict, text: verdictText(verdict, filled?.levelL, household.units) },
    tap: tapText(fuel, choice, restDays),
    localLimit: { where: limit.where, text: limit.text, exceeded: limit.exceeded },
    derivations: [],
  };
  const facts: FuelFacts = { ...input, fuel, restDays, advised, amounts: filled, treated, takers, bought };
  const derivations: Derivation[] = [
    choiceDerivation(facts, choice),
    ...(filled?.derivations ?? []),
    ...(doseML === undefined ? [] : [doseDerivation(filled!.levelL, dose!, doseML, fuel.premix)]),
    ...(runMinutes === undefined ? [] : [runDerivation(fuel, machine.engine.idleFlowLPerH, runMinutes)]),
    ...(drainedL === undefined ? [] : drainDerivations(fuel, household, drainedL, cans!, drainedUseBy!)),
    ...water.derivations,
    ageDerivation(row, bought, meanC, plan, firstUse, household.locale),
    limitDerivation(limit, household.country, drainedL),
  ];
  plan.derivations = derivations.map((d) =>
    d.caveat === undefined ? d : { ...d, caveat: inUnits(d.caveat, household.units) },
  );
  return { plan, warnings: warningsFor(plan, facts) };
}

/** Fuel counts as fresh on the fill day where at least two parts fresh go on one part old. */
function ageFrom(fuel: Fuel, lastUse: IsoDate, filled: FillAmounts | undefined): IsoDate {
  const oldL = (filled?.levelL ?? 0) - (filled?.addL ?? 0);
  if (filled && filled.addL >= FRESH_PARTS * oldL) return lastUse;
  return fuel.boughtOn ?? lastUse;
}

function drainedLitres(fuel: Fuel): number {
  return fuel.inTankL.value + (fuel.delivery === 'carburettor' ? fuel.lineAndBowlsL : 0);
}

function verdictText(
  verdict: 'use' | 'mix' | 'dispose',
  levelL: number | undefined,
  units: Household['units'],
): string {
  const texts = {
    use: 'within its age, use it.',
    mix: `past its surest age. Clear and not sour, it can be used mixed with at least ${FRESH_PARTS} parts fresh fuel${
      levelL === undefined
        ? '.'
        : `: draw the tank down to ${formatQuantity(levelL / (1 + FRESH_PARTS), 'L', units)} and fill up; what is drawn off goes into other engines the same way.`
    }`,
    dispose: 'too old: take it to the local collection point; never onto the ground or into a drain.',
  };
  const text = (levelL === undefined ? 'fill with fresh fuel. What is left in the cans: ' : '') + texts[verdict];
  return text[0]!.toUpperCase() + text.slice(1);
}
