import { MONTH_DAYS, vapourPressurePa } from '../climate/index.ts';
import { daysBetween } from '../dates.ts';
import type { Machine, Place } from '../household.ts';
import type { CorrosionPlan, Derivation, Warning } from '../season-plan.ts';
import type { StoreMonth } from '../storage/types.ts';
import { desiccantFor } from './bag-plan.ts';
import {
  type AirDose,
  categoryOf,
  doseResponseRow,
  firstYearLossUm,
  type Metal,
  outsideValid,
  STATED_UNCERTAINTY,
  VALID,
} from './iso9223.ts';
import { protectionFor } from './protection.ts';

export interface CorrosionInput {
  machine: Machine;
  place: Place;
  /** The store's air by month, January first. */
  airMonths: StoreMonth[];
  /** Months of the rest, 1–12. */
  restMonths: number[];
  annualMeanC: number;
  annualMeanRhPct: number;
  /** The lay-up's rinse is planned and its days are not past: what is on the machine comes off before it rests. */
  rinseAhead?: boolean | undefined;
  /** Why there is to be no closed bag, in words. */
  withoutBag?: string | undefined;
}

/** Chloride on a machine that was driven on salted roads and not washed, over that of the place; common practice, 5–20. */
export const UNWASHED_SALT_FACTOR = 10;

/** Where the standard comes out about three times too low: cold, and next to no chloride. */
const COLD_CLEAN = { atMostC: 3, atMostChloride: 3, factorHigh: 3 };

/** The steel of a dehumidified store is not meant by the dose–response functions, nor is a space that is held dry. */
const DRY_STORE_RH_PCT = 50;

/** Air changes above which a space cannot be dried [1/h]; common practice. */
const OPEN_AIR_CHANGES = 2;

/**
 * Corrosivity of the store's air for one machine, and the protection it asks for.
 * @param input - machine, place, store air by month, months of the rest, annual means of the store
 * @returns the plan and its warnings
 * Source: ISO 9223:2012 for the category; protection and desiccant name their own.
 * Valid: the functions were made for open air; a closed store without rain is a continuation.
 * Error: −33 % to +50 % as the standard states; three times too low on clean cold inland sites.
 */
export function planCorrosion(input: CorrosionInput): { plan: CorrosionPlan; warnings: Warning[] } {
  const { machine, place, annualMeanC, annualMeanRhPct } = input;
  const isSalted = machine.roadSalt.exposed && !machine.roadSalt.washed;
  const unwashedSalt = isSalted && !input.rinseAhead;
  const dose: AirDose = {
    temperatureC: annualMeanC,
    rhPct: Math.min(100, annualMeanRhPct),
    sulphurDioxideMgM2D: place.sulphurDioxideMgM2D,
    chlorideMgM2D: place.chlorideMgM2D * (unwashedSalt ? UNWASHED_SALT_FACTOR : 1),
  };
  const steel = firstYearLossUm('steel', dose);
  const zinc = firstYearLossUm('zinc', dose);
  const category = categoryOf('steel', steel);
  const coldClean = dose.temperatureC <= COLD_CLEAN.atMostC && dose.chlorideMgM2D <= COLD_CLEAN.atMostChloride;
  const uncertainty = {
    low: STATED_UNCERTAINTY.low,
    high: coldClean ? COLD_CLEAN.factorHigh : STATED_UNCERTAINTY.high,
  };

  const restDays = daysBetween(machine.season.lastUse, machine.season.firstUse);
  const wetHoursPerYear = wetHours(input);
  const dryStore = (place.enclosure.maxRhPct ?? 100) <= DRY_STORE_RH_PCT;
  const protection = protectionFor({
    category,
    wetHoursPerYear,
    unwashedSalt,
    restDays,
    canDehumidify: place.power && place.enclosure.airChangesPerH <= OPEN_AIR_CHANGES,
    dryStore,
    hasCylinders: machine.engine.cycle !== 'electric',
    withoutBag: input.withoutBag,
  });
  const bag = protection.level === 4 ? desiccantFor(machine.kind, restDays, closingVapour(input)) : undefined;

  const plan: CorrosionPlan = {
    category,
    steelUmPerYear: steel,
    zincUmPerYear: zinc,
    uncertainty,
    caveats: caveatsOf(dose, { steel, zinc, coldClean, unwashedSalt, uncertainty }),
    protection: {
      level: protection.level,
      name: protection.name,
      measures: protection.measures,
      reason: protection.reason,
    },
    desiccant: bag?.desiccant,
    dehumidifierRhPct: protection.level === 5 || dryStore ? { low: 40, high: 50 } : undefined,
    derivations: [
      rateDerivation('steel', dose, steel, place.chlorideMgM2D, unwashedSalt),
      rateDerivation('zinc', dose, zinc, place.chlorideMgM2D, unwashedSalt),
      {
        method: 'corrosion.protection',
        equation: 'the highest level that category, wet hours and idle time ask for, one more for salt not washed off',
        inputs: [
          { name: 'category of steel', value: category, unit: '' },
          { name: 'wet hours of the rest, brought to a year', value: wetHoursPerYear, unit: 'h' },
          { name: 'idle', value: restDays, unit: 'd' },
          { name: 'road salt not washed off', value: unwashedSalt ? 'yes' : 'no', unit: '' },
          { name: 'power here', value: place.power ? 'yes' : 'no', unit: '' },
        ],
        result: { value: `level ${protection.level}: ${protection.name}`, unit: '' },
        sources: [
          ...new Set([
            ...protection.sources,
            'time of wetness classes: ISO 9223:1992; idle time: steps of NAVEDTRA 14022',
          ]),
        ],
        caveat: 'Which level a category asks for is common practice, no standard.',
      },
      ...(bag?.derivations ?? []),
    ],
  };
  return { plan, warnings: isSalted ? [saltWarning(machine, unwashedSalt, category)] : [] };
}

/** Hours with wet metal in the months of the rest, brought to a year [h]. */
function wetHours({ airMonths, restMonths }: CorrosionInput): number {
  const months = airMonths.filter((m) => restMonths.includes(m.month));
  const days = months.reduce((sum, m) => sum + MONTH_DAYS[m.month - 1]!, 0);
  if (days === 0) return 0;
  return (months.reduce((sum, m) => sum + m.wetHours, 0) * 365) / days;
}

/** Vapour in the air that a bag closes in: the store's mean in the month of the last use [Pa, °C]. */
function closingVapour({ airMonths, machine, annualMeanC, annualMeanRhPct }: CorrosionInput): {
  temperatureC: number;
  rhPct: number;
  vapourPa: number;
} {
  const month = airMonths.find((m) => m.month === Number(machine.season.lastUse.slice(5, 7)));
  const temperatureC = month?.meanC ?? annualMeanC;
  const rhPct = Math.min(100, month?.meanRhPct ?? annualMeanRhPct);
  return { temperatureC, rhPct, vapourPa: vapourPressurePa(temperatureC, rhPct) };
}

function caveatsOf(
  dose: AirDose,
  found: {
    steel: number;
    zinc: number;
    coldClean: boolean;
    unwashedSalt: boolean;
    uncertainty: { low: number; high: number };
  },
): string[] {
  const { steel, zinc, coldClean, unwashedSalt, uncertainty } = found;
  const category = categoryOf('steel', steel);
  const low = categoryOf('steel', steel * uncertainty.low);
  const high = categoryOf('steel', steel * uncertainty.high);
  const zincCategory = categoryOf('zinc', zinc);
  return [
    `ISO 9223 states −33 % to +50 % for an estimate from air data${low === high ? '' : `; within the range here it could be ${low === category ? '' : `${low} to `}${high}`}.`,
    'The functions were made for bare metal in open air. A store without rain gathers less from outside but nothing is washed off either; indoors the rate is often about a tenth.',
    ...(coldClean
      ? [
          'On clean, cold inland sites the standard comes out about three times too low (six field sites held against it: a ratio of about a third), so the upper bound here is three times the estimate.',
        ]
      : []),
    ...(unwashedSalt
      ? [
          `Chloride is taken ${UNWASHED_SALT_FACTOR} times that of the place for road salt that was not washed off (5–20, common practice). Salt keeps steel wet from 33 % (magnesium chloride) and 76 % (sodium chloride) relative humidity.`,
        ]
      : []),
    'Zinc came out about half as high as measured at the fourteen field sites held against it, near the sea above all.',
    ...(zincCategory === category ? [] : [`By zinc the category is ${zincCategory}.`]),
    ...outsideValid(dose).map((text) => `${text[0]!.toUpperCase()}${text.slice(1)}; the figure is an extrapolation.`),
    'Copper and aluminium are not estimated: their constants could not be verified.',
  ];
}

function rateDerivation(metal: Metal, dose: AirDose, loss: number, placeChloride: number, salted: boolean): Derivation {
  const row = doseResponseRow(metal);
  const outside = outsideValid(dose);
  return {
    method: `corrosion.${metal}`,
    equation: `${row.name}: ${row.equation}`,
    inputs: [
      { name: 'annual mean temperature of the store, T', value: dose.temperatureC, unit: VALID.temperatureC.unit },
      { name: 'annual mean relative humidity, RH', value: dose.rhPct, unit: VALID.rhPct.unit },
      { name: 'sulphur dioxide, P', value: dose.sulphurDioxideMgM2D, unit: VALID.sulphurDioxideMgM2D.unit },
      { name: 'chloride, S', value: dose.chlorideMgM2D, unit: VALID.chlorideMgM2D.unit },
      ...(salted
        ? [
            { name: 'chloride of the place', value: placeChloride, unit: VALID.chlorideMgM2D.unit },
            { name: 'factor for salt not washed off', value: UNWASHED_SALT_FACTOR, unit: '' },
          ]
        : []),
    ],
    result: { value: loss, unit: 'µm in the first year' },
    sources: [row.source],
    caveat: `Category ${categoryOf(metal, loss)}. ${outside.length === 0 ? 'All inputs lie within the intervals of the standard.' : `${outside.join('; ')}.`}`,
  };
}

/** Salt that the lay-up's rinse will take off is a note; salt that nobody has rinsed off in its days stays over the rest. */
function saltWarning(machine: Machine, unwashedSalt: boolean, category: CorrosionPlan['category']): Warning {
  const common = { machine: machine.id, about: 'corrosion' };
  const isAssumed = machine.assumptions.some(({ field }) => field === 'roadSalt.exposed');
  const assumed = isAssumed ? ' (assumed: nobody has said that it is kept off salted roads)' : '';
  if (!unwashedSalt)
    return {
      ...common,
      level: 'note',
      text: `Road salt is taken to be on the machine until it is rinsed${assumed}. The plan reckons with it rinsed off.`,
      act: 'Rinse it off at the lay-up, before anything else, and tick the rinse.',
    };
  return {
    ...common,
    level: 'warning',
    text: `Road salt is on the machine over the rest${assumed}, for no rinse is ticked: ${category} air for its steel.`,
    act: 'Wash it with fresh water and dry it before anything else is done; tick the rinse where it is done.',
  };
}
