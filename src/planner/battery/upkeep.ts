/**
 * Whether a maintainer keeps its battery full, as far as readings tell: a battery that is kept reads full on any day.
 *
 * From the first low reading on, the battery is reckoned as one without a maintainer, until a rested reading shows it full
 * again. A charge alone does not end a lapse: what let the battery down may still be so.
 */
import type { Battery, Household } from '../household.ts';
import type { Charge, Warning } from '../season-plan.ts';
import { listText, withSeparator, writtenDate } from '../written.ts';
import { round } from './charge.ts';
import type { ChemistryRow } from './chemistries.ts';
import type { Reset } from './loss.ts';
import { batteryName } from './name.ts';
import { type JudgedReading, REST_H } from './readings.ts';
import type { BatteryUnit } from './unit.ts';
import { openCircuitVoltage } from './voltage.ts';

/**
 * A lead–acid battery that was charged to the end reads no less than this with its spread [%]. TB 9-6140-252-13, WP 0011, takes
 * an AGM battery of 12.65 V after 8 h for charged; the table makes that 80 %, give or take 8.
 */
export const FULL_AT_LEAST_PCT = 85;

/** A maintainer that has only just gone on is still filling the battery [d]. */
const FILLING_DAYS = 21;

/** So many readings of a lapse are said, the last ones. */
const SAID = 3;

/** Days on which the battery was not kept. */
export interface Lapse {
  /** Day of the rest of its first low reading. */
  from: number;
  /** The low readings, by rising day. */
  low: JudgedReading[];
  /** Days of the charges since. */
  charged: number[];
}

export interface Upkeep {
  /** By day of the rest, 1 where the maintainer is taken to keep the battery full. */
  kept: Uint8Array;
  /** The lapse that no reading has ended yet. */
  lapse?: Lapse | undefined;
  /** The readings, low ones used whatever their rest. */
  readings: JudgedReading[];
}

/**
 * Holds the readings of a battery on a maintainer against what a kept one reads.
 * @param row - its chemistry
 * @param judged - its readings, by rising day
 * @param charges - charges that the log holds, by rising day
 * @param days - days of the rest
 */
export function upkeepOf(
  row: ChemistryRow,
  judged: readonly JudgedReading[],
  charges: readonly Reset[],
  days: number,
): Upkeep {
  const kept = new Uint8Array(days + 1).fill(1);
  const readings = judged.map((reading) => used(row, reading));
  let lapse: Lapse | undefined;
  // What is read on the day of a charge was read before it: of one day, the readings stay in front.
  const steps = [
    ...readings.map((reading) => ({ index: reading.index, reading })),
    ...charges.map(({ index }) => ({ index, reading: undefined })),
  ].sort((a, b) => a.index - b.index);
  for (const { index, reading } of steps) {
    if (reading === undefined) lapse?.charged.push(index);
    else if (isLow(row, reading)) {
      lapse ??= { from: index, low: [], charged: [] };
      lapse.low.push(reading);
    } else if (reading.usable && lapse) {
      kept.fill(0, lapse.from, index);
      lapse = undefined;
    }
  }
  if (lapse) kept.fill(0, lapse.from);
  return { kept, lapse, readings };
}

/** On a maintainer nothing is drawn: its voltage is too high after a charge, never too low, and a low one tells without rest. */
function used(row: ChemistryRow, reading: JudgedReading): JudgedReading {
  return !reading.usable && isLow(row, reading) ? { ...reading, usable: true } : reading;
}

/**
 * Whether the loss is reckoned with the leads on: of a battery that its maintainer does not keep the negative lead comes off, which
 * its warning asks for, unless the household wants it on.
 * @param battery - the battery
 * @param connected - leads on by its care
 * @param isLapsed - its maintainer does not keep it
 */
export function isLeadOn({ connected: wanted }: Battery, connected: boolean, isLapsed: boolean): boolean {
  return connected && (!isLapsed || wanted === true);
}

/** The low readings of a lapse that no charge has followed. */
export function unanswered({ low, charged }: Lapse): JudgedReading[] {
  const since = charged.at(-1) ?? Number.NEGATIVE_INFINITY;
  // What is read on the day of a charge was read before it.
  return low.filter(({ index }) => index > since);
}

/** Whether the battery reads less than one that is kept: under its threshold, or surely under full. */
function isLow(row: ChemistryRow, { sound, stateOfChargePct, spreadPct }: JudgedReading): boolean {
  if (!sound) return false;
  const least = Math.min(FULL_AT_LEAST_PCT, row.storagePct.low);
  return stateOfChargePct + spreadPct < least || isDown(row, stateOfChargePct);
}

/** At its threshold or under it; a lithium battery's voltage is too flat to tell without its spread. */
const isDown = (row: ChemistryRow, pct: number) => row.acid !== undefined && pct <= row.thresholdPct;

/**
 * What a lapse says, and what to do about it.
 * @param of - the machine, the row of its battery, and how it is kept
 * @param household - language of the dates
 * @param before - what has to be settled before it is charged
 */
export function lapseWarnings(
  {
    machine,
    battery: own,
    row,
    rest,
    upkeep,
    leadOn,
  }: Pick<BatteryUnit, 'machine' | 'battery' | 'row' | 'rest' | 'upkeep' | 'leadOn'>,
  { locale }: Pick<Household, 'locale'>,
  before?: Charge['before'],
): Warning[] {
  const { lapse } = upkeep ?? {};
  if (!lapse) return [];
  const common = { machine: machine.id, about: 'battery' };
  const battery = batteryName(machine);
  const lead =
    own.drainMA.high > 0
      ? leadOn
        ? ' Until it holds, each charge lasts only days with the leads on: take the negative lead off where nothing needs it.'
        : ' Until it holds, take the negative lead off: its later charges are reckoned so.'
      : '';
  const written = (index: number) => writtenDate(rest.dates[index]!, locale);
  const last = lapse.low.at(-1)!;
  const said = listText(lapse.low.slice(-SAID).map((reading) => readingText(reading, locale)));
  if (unanswered(lapse).length === 0)
    return [
      {
        ...common,
        level: 'note',
        text: `${battery} is on a maintainer, and read ${said}; it was charged on ${written(lapse.charged.at(-1)!)}, and not read since.`,
        act: `A week later take the maintainer off, let the battery rest ${REST_H.better} h, read it and write that down. Full: the maintainer keeps it, and the plan reckons with it again. Low again: see to mains, clips and maintainer, and have the battery load-tested.${lead}`,
      },
    ];
  const full = `${withSeparator(openCircuitVoltage(row.id, row.chargeToPct, last.temperatureC).toFixed(2), locale)} V`;
  const falls = lapse.low.length > 1 && last.volts < lapse.low[0]!.volts ? ', and it falls' : '';
  const down = isDown(row, last.stateOfChargePct)
    ? `; at or under ${row.thresholdPct} % a battery has to be charged`
    : '';
  const filling =
    last.index <= FILLING_DAYS
      ? ' If the maintainer has only just gone on, it is still to fill it: see its lamp change to holding, and read again in a week.'
      : '';
  return [
    {
      ...common,
      level: 'warning',
      text: `${battery} is on a maintainer, and is not kept full: it read ${said}${falls}${down}. One that is kept reads about ${full} at that temperature. Either the maintainer gives nothing (switched off, unplugged, fuse or socket dead, faulty, a clip loose), or the battery fails.${filling}`,
      act: `Look today at mains, plug, lamp and clips, tight on clean posts${row.acid ? ': at work it holds the posts above 13 V' : ''}. ${before ? `${before.text} Once that is settled, c` : 'C'}${row.acid ? 'harge the battery full with a proper charger' : 'harge the battery, warmed through, with a charger made for it'}, let it rest ${REST_H.better} h, read it again and write both down. Still low: have it load-tested, and replaced if it fails.${lead}`,
    },
  ];
}

/** "12.38 V on 5 December 2026 (about 75 %)". */
export function readingText({ volts, date, stateOfChargePct }: JudgedReading, locale: string): string {
  return `${withSeparator(volts.toFixed(2), locale)} V on ${writtenDate(date, locale)} (about ${round(stateOfChargePct, 0, locale)} %)`;
}
