import { dayIndexOf } from '../climate/index.ts';
import { addMonths, daysBetween, earlier, later } from '../dates.ts';
import type { Fuel, Household, IsoDate, Machine, Place } from '../household.ts';
import type { Derivation, FuelPlan, Warning } from '../season-plan.ts';
import type { StoreYear } from '../storage/types.ts';
import { formatQuantity } from '../units/index.ts';
import { type KeepingRow, keepingRow, lifeShare, useByWindow, verdictOn } from './age.ts';
import { adviseChoice, choiceFacts } from './choice.ts';
import { type FillAmounts, fillAmounts } from './fill.ts';
import { localLimit } from './limits.ts';
import { restMeanC } from './store-mean.ts';
import { takersOf } from './takers.ts';
import { tapText } from './tap.ts';
import { warningsFor } from './warnings.ts';
import { waterPart } from './water-part.ts';

export interface FuelInput {
  machine: Machine;
  place: Place;
  household: Household;
  store: StoreYear;
  /** Lowest and highest hour of the store over the rest [°C]. */
  lowestStoreC: number;
  highestStoreC: number;
  asOf: IsoDate;
}

/** What the parts of the fuel plan hand on to the warnings. */
export interface FuelFacts extends FuelInput {
  fuel: Fuel;
  restDays: number;
  advised: ReturnType<typeof adviseChoice>;
  amounts?: FillAmounts | undefined;
  treated: boolean;
  takers: string[];
  bought: IsoDate;
}

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

  const meanC = restMeanC(store, lastUse, firstUse);
  const fillC = store.dayMeanC[dayIndexOf(lastUse)]!;
  const filled = choice === 'fill' ? fillAmounts(fuel, fillC, input.highestStoreC) : undefined;
  const bought = ageFrom(fuel, lastUse, filled);
  const bare = useByWindow(bought, keepingRow('tank-untreated'), meanC);
  const treated = filled !== undefined && dose !== undefined && verdictOn(firstUse, bare) !== 'use';

  const row = keepingRow(filled ? (treated ? 'tank-treated' : 'tank-untreated') : 'can');
  const window = useByWindow(bought, row, meanC);
  const verdict = verdictOn(firstUse, window);

  const drainedL = filled ? undefined : drainedLitres(fuel);
  const drainedUseBy = filled ? undefined : later(lastUse, earlier(addMonths(lastUse, 1), window.latest));
  const takers = drainedUseBy ? takersOf(machine, household, lastUse, drainedUseBy) : [];
  const cans = drainedL === undefined ? undefined : cansFor(drainedL, household.fuelCare.canL);
  const limit = localLimit(household.country, drainedL);
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
    atFirstUse: { verdict, text: verdictText(verdict, choice) },
    tap: tapText(fuel, choice, restDays),
    localLimit: { where: limit.where, text: limit.text, exceeded: limit.exceeded },
    derivations: [],
  };
  const facts: FuelFacts = { ...input, fuel, restDays, advised, amounts: filled, treated, takers, bought };
  plan.derivations = [
    choiceDerivation(facts, choice),
    ...(filled?.derivations ?? []),
    ...(doseML === undefined ? [] : [doseDerivation(filled!.levelL, dose!, doseML, fuel.premix)]),
    ...(runMinutes === undefined ? [] : [runDerivation(fuel, machine.engine.idleFlowLPerH, runMinutes)]),
    ...(drainedL === undefined ? [] : drainDerivations(fuel, household, drainedL, cans!, drainedUseBy!)),
    ...water.derivations,
    ageDerivation(row, bought, meanC, plan, firstUse),
    {
      method: 'fuel.local-limit',
      equation: 'petrol in cans against the limit of the place',
      inputs: [
        { name: 'country', value: household.country ?? 'not stated', unit: '' },
        { name: 'limit', value: limit.row?.limitL ?? 'not known', unit: limit.row ? 'L' : '' },
        { name: 'drained from this machine', value: drainedL ?? 0, unit: 'L' },
      ],
      result: {
        value: limit.exceeded === null ? 'not decided' : limit.exceeded ? 'exceeded' : 'within the limit',
        unit: '',
      },
      sources: limit.row ? [limit.row.source] : [],
      caveat: 'Not legal advice: check your local code. Counts this machine alone; petrol in all your cans adds up.',
    },
  ];
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

/**
 * Cans of one size for a volume; a can is full at its marked volume.
 * @param litres - what is to be kept [L]
 * @param canL - room in one can [L]
 */
export function cansFor(litres: number, canL: number): number {
  if (!(litres >= 0 && canL > 0))
    throw new RangeError(
      `cans: found ${litres} L into cans of ${canL} L, expected litres of 0 or more and a can over 0 L`,
    );
  return Math.ceil(litres / canL - 1e-9);
}

function verdictText(verdict: 'use' | 'mix' | 'dispose', choice: 'fill' | 'drain'): string {
  const what = choice === 'drain' ? 'Fill with fresh fuel. What is left in the cans: ' : '';
  const texts = {
    use: 'within its age, use it.',
    mix: `past the surest age: mix one part with at least ${FRESH_PARTS} parts fresh fuel, in an engine that is not fussy.`,
    dispose: 'too old: take it to the local collection point; never onto the ground or into a drain.',
  };
  const text = what + texts[verdict];
  return text[0]!.toUpperCase() + text.slice(1);
}

function choiceDerivation(facts: FuelFacts, choice: 'fill' | 'drain'): Derivation {
  const { fuel, restDays, advised, household } = facts;
  return {
    method: 'fuel.choice',
    equation:
      'the first rule that applies: tank off, short rest, longer than fuel lives, ethanol, bare steel, injection, stabiliser',
    inputs: [
      { name: 'delivery', value: fuel.delivery, unit: '' },
      { name: 'tank', value: `${fuel.tankMaterial}${fuel.lined ? ', lined' : ''}`, unit: '' },
      { name: 'blend', value: fuel.blend, unit: '' },
      { name: 'length of the rest', value: restDays, unit: 'd' },
      {
        name: 'stabiliser at hand',
        value: household.fuelCare.stabiliserDoseMLPerL === undefined ? 'no' : 'yes',
        unit: '',
      },
      { name: 'rule', value: advised.id, unit: '' },
      { name: 'chosen by you', value: fuel.choice ?? 'no', unit: '' },
    ],
    result: { value: choice, unit: '' },
    sources: [advised.source],
    caveat: "The maker's handbook goes before these rules.",
  };
}

function doseDerivation(levelL: number, dose: number, doseML: number, premix: boolean): Derivation {
  return {
    method: 'fuel.dose',
    equation: 'dose = litres in the full tank · dose ratio',
    inputs: [
      { name: 'fuel to treat', value: levelL, unit: 'L' },
      { name: 'dose ratio', value: dose, unit: 'mL/L' },
    ],
    result: { value: doseML, unit: 'mL' },
    sources: ['dose ratio of the product at hand, as given for the household'],
    caveat: `For all the fuel in the tank, not only for what is added. Put it in before the fresh fuel, so that filling mixes it.${
      premix ? ' Top up with two-stroke mixture of the same ratio; the dose counts the mixture.' : ''
    }`,
  };
}

function runDerivation(fuel: Fuel, flow: number, minutes: number): Derivation {
  return {
    method: 'fuel.run',
    equation: 'minutes = volume of line and bowls / idle flow · 60',
    inputs: [
      { name: 'fuel in line, filter and bowls', value: fuel.lineAndBowlsL, unit: 'L' },
      { name: 'idle flow', value: flow, unit: 'L/h' },
    ],
    result: { value: minutes, unit: 'min' },
    sources: ['idle flow and line volume: common practice'],
    caveat:
      'Treated fuel mixes with what it pushes out, so run somewhat longer. Outdoors only: carbon monoxide. Under load on the last ride it goes faster.',
  };
}

function drainDerivations(
  fuel: Fuel,
  household: Household,
  drainedL: number,
  cans: number,
  useBy: IsoDate,
): Derivation[] {
  const { canL, cans: atHand } = household.fuelCare;
  const bowlsL = fuel.delivery === 'carburettor' ? fuel.lineAndBowlsL : 0;
  return [
    {
      method: 'fuel.drained',
      equation: 'drained = in the tank + line and bowls (carburettor)',
      inputs: [
        { name: 'in the tank on the last day of use', value: fuel.inTankL.value, unit: 'L' },
        { name: 'line and bowls', value: bowlsL, unit: 'L' },
      ],
      result: { value: drainedL, unit: 'L' },
      sources: ['balance of volumes'],
      caveat: `By what is in the tank: between ${(fuel.inTankL.low + bowlsL).toFixed(1)} and ${(fuel.inTankL.high + bowlsL).toFixed(1)} L.`,
    },
    {
      method: 'fuel.cans',
      equation: 'cans = drained / room in one can, rounded up',
      inputs: [
        { name: 'drained', value: drainedL, unit: 'L' },
        { name: 'room in one can', value: canL, unit: 'L' },
        { name: 'cans at hand', value: atHand, unit: '' },
      ],
      result: { value: cans, unit: '' },
      sources: ['1 US gal = 3.785411784 L, 1 imp gal = 4.54609 L by definition'],
      caveat: `The marked volume leaves the room for swelling. With most that can be in the tank: ${cansFor(fuel.inTankL.high + bowlsL, canL)}.`,
    },
    {
      method: 'fuel.drained-use-by',
      equation: 'one month from draining, or the end of its life in a can where that is sooner',
      inputs: [{ name: 'room in cans', value: formatQuantity(cans * canL, 'L', household.units), unit: '' }],
      result: { value: useBy, unit: '' },
      sources: ['use within 30 days (university extension); used up fresh, not kept for spring: common practice'],
    },
  ];
}

function ageDerivation(row: KeepingRow, bought: IsoDate, meanC: number, plan: FuelPlan, firstUse: IsoDate): Derivation {
  return {
    method: 'fuel.age',
    equation: 'use-by = purchase + life; life at T = life at 20 °C · 2^(−(T − 20)/10) above 20 °C, no credit below',
    inputs: [
      { name: 'age counted from', value: bought, unit: '' },
      { name: 'container', value: row.what, unit: '' },
      { name: 'surely good for', value: row.months.low, unit: 'months' },
      { name: 'surely stale after', value: row.months.high, unit: 'months' },
      { name: 'mean store temperature over the rest', value: meanC, unit: '°C' },
      { name: 'share of life left by warmth', value: lifeShare(meanC), unit: '' },
      { name: 'first use', value: firstUse, unit: '' },
    ],
    result: {
      value: `${plan.useBy.earliest} to ${plan.useBy.latest}: ${plan.atFirstUse.verdict} at first use`,
      unit: '',
    },
    sources: [row.source],
    caveat: `${row.caveat} Two-stroke mixture keeps as the petrol in it. Smell and colour decide in doubt: sour or dark fuel is not used.`,
  };
}
