import { counted } from '../written.ts';
import type { Category } from './iso9223.ts';

/** One level of protection; each holds the measures of those below it. */
export interface ProtectionRow {
  level: number;
  name: string;
  measure: string;
  /** Left out on a machine with no cylinders. */
  engineOnly: boolean;
  source: string;
}

export const PROTECTION: readonly ProtectionRow[] = [
  {
    level: 1,
    name: 'wash and dry',
    measure: 'Wash (salt above all), dry, clear all drains.',
    engineOnly: false,
    source: 'common practice',
  },
  {
    level: 2,
    name: 'film on bare metal',
    measure: 'Film of oil or wax on bare steel, fasteners and cut edges; not on discs, pads and tyres.',
    engineOnly: false,
    source: 'common practice',
  },
  {
    level: 3,
    name: 'fogged cylinders',
    measure: 'Fog the cylinders with storage oil and turn the engine over once; plug intake and exhaust.',
    engineOnly: true,
    source: 'common practice; naval aircraft preservation, level II (60 days to 1 year), NAVEDTRA 14022',
  },
  {
    level: 4,
    name: 'closed bag with desiccant',
    measure:
      'If you can: closed bag with desiccant and an indicator card that is read at each look-in. Else a cover that breathes.',
    engineOnly: false,
    source: 'GDV packaging handbook 4.4.4: effective under 40 % for up to 3 years',
  },
  {
    level: 5,
    name: 'dehumidified space',
    measure: 'If you can: closed space with a dehumidifier at 40–50 % relative humidity.',
    engineOnly: false,
    source: 'US Army TM 38-260, par. 5-6 (50 % at most); TB 55-1900-231-15, ch. IV (40 ± 5 %)',
  },
];

/** What the level is decided from. */
export interface ProtectionFacts {
  category: Category;
  /** Wet hours of the rest brought to a year [h]. */
  wetHoursPerYear: number;
  unwashedSalt: boolean;
  restDays: number;
  /** A dehumidifier can run: power, and a space that can be closed. */
  canDehumidify: boolean;
  /** The store is held at 50 % or less already. */
  dryStore: boolean;
  hasCylinders: boolean;
  /** Why there is to be no bag, in words. */
  withoutBag?: string | undefined;
}

const LEVEL_OF_CATEGORY: Record<Category, number> = { C1: 1, C2: 2, C3: 3, C4: 4, C5: 5, CX: 5 };

/**
 * Time of wetness a year by ISO 9223:1992, classes τ1 to τ5, and the level that each asks for (common practice). Wet hours alone ask for
 * no closed bag: in clean air a film holds on wet metal, and what salt and sulphur make of it is in the category.
 */
const WETNESS: readonly { upToH: number; level: number }[] = [
  { upToH: 10, level: 1 },
  { upToH: 250, level: 2 },
  { upToH: 2500, level: 2 },
  { upToH: 5500, level: 3 },
  { upToH: 8760, level: 3 },
];

/** Idle time and the level that it asks for or stops at. Source: steps of NAVEDTRA 14022 (60 days, 1 year). */
const IDLE: readonly { upToDays: number; least: number; most: number }[] = [
  { upToDays: 27, least: 1, most: 2 },
  { upToDays: 60, least: 1, most: 3 },
  { upToDays: 366, least: 2, most: 5 },
  { upToDays: Number.POSITIVE_INFINITY, least: 4, most: 5 },
];

/**
 * Level of protection over a rest, with the measures and the reason.
 * @param facts - category, wet hours, salt, length of the rest, what the store allows
 * Source: table PROTECTION; which level a category asks for is common practice.
 */
export function protectionFor(facts: ProtectionFacts): {
  level: number;
  name: string;
  measures: string[];
  reason: string;
  sources: string[];
} {
  const wet = WETNESS.find((w) => facts.wetHoursPerYear <= w.upToH) ?? WETNESS.at(-1)!;
  const idle = IDLE.find((row) => facts.restDays <= row.upToDays)!;
  const asked = Math.max(LEVEL_OF_CATEGORY[facts.category], wet.level, idle.least) + (facts.unwashedSalt ? 1 : 0);
  let level = Math.min(asked, idle.most, 5);
  if (facts.dryStore) level = Math.min(level, 3);
  else if (level >= 4) level = facts.canDehumidify ? 5 : 4;
  const isBagOut = level === 4 && facts.withoutBag !== undefined;
  if (isBagOut) level = 3;
  if (level === 3 && !facts.hasCylinders) level = 2;

  const rows = PROTECTION.filter((row) => row.level <= Math.min(level, 3) || row.level === level).filter(
    (row) => facts.hasCylinders || !row.engineOnly,
  );
  const because = [
    `Air of corrosion class ${facts.category}`,
    `metal wet for ${counted(Math.round(facts.wetHoursPerYear), 'hour')} a year at this rate`,
    facts.unwashedSalt ? 'road salt not washed off' : '',
    `${counted(facts.restDays, 'day')} idle`,
    facts.dryStore ? 'the store is held dry already' : '',
    isBagOut ? facts.withoutBag : '',
    level === 4 && !facts.dryStore && !facts.canDehumidify ? 'no power or no closed space here for a dehumidifier' : '',
  ].filter(Boolean);
  const measures = rows.map((row) => row.measure);
  if (facts.unwashedSalt)
    measures.unshift('First of all wash the salt off with plenty of fresh water: no film holds over salt.');
  return {
    level,
    name: PROTECTION[level - 1]!.name,
    measures,
    reason: `${because.join('; ')}.`,
    sources: rows.map((row) => row.source),
  };
}
