import { MONTH_DAYS } from './calendar.ts';
import { saturationOverWaterPa } from './psychrometrics.ts';
import type { HourlyClimate } from './types.ts';
import { HOURS_PER_YEAR } from './types.ts';

/** One thing wrong in a weather file. */
export interface EpwProblem {
  /** Line in the file, from 1. */
  line: number;
  /** Sign in the line, from 1: where the value begins that is wrong. */
  column: number;
  text: string;
}

/** Everything wrong in a weather file, found in one reading. */
export class EpwError extends Error {
  readonly problems: EpwProblem[];
  constructor(problems: EpwProblem[]) {
    super(`weather file: ${problems.map((p) => `line ${p.line}: ${p.text}`).join('; ')}`);
    this.name = 'EpwError';
    this.problems = problems;
  }
}

/** Lines before the first hour. */
const HEADER_LINES = 8;

/** Columns of an hour, from 0. */
const COLUMN = { month: 1, day: 2, hour: 3, dryBulb: 6, dewPoint: 7, humidity: 8 };

/** Values of an hour at the most, as the data dictionary has them. */
const FIELDS = 35;

/** Problems reported of one file at most, so that a file of another kind does not answer with 8760 lines. */
const MOST_PROBLEMS = 50;

function numberAt(fields: string[], column: number): number {
  const text = fields[column]?.trim();
  return text !== undefined && /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
}

/** Where a field begins in its line, from 1, behind its spaces; of one that is not there, the end of the line. */
function signOf(fields: readonly string[], column: number): number {
  const before = fields.slice(0, column).join(',').length + (column > 0 ? 1 : 0);
  const field = fields[column] ?? '';
  return Math.min(before, fields.join(',').length) + (field.length - field.trimStart().length) + 1;
}

/** The value of a field, or what is wrong with it; the format's own codes for "missing" are out of range. */
function reading(fields: string[], column: number, what: string, low: number, high: number): number | string {
  const value = numberAt(fields, column);
  if (value >= low && value <= high) return value;
  return `${what}: "${fields[column]?.trim() ?? ''}" found, ${low} to ${high} expected`;
}

/** Relative humidity of an hour, from its own column or else from the dew point. */
function humidityOf(fields: string[], temperatureC: number): number | string {
  const rh = reading(fields, COLUMN.humidity, 'relative humidity [%]', 0, 110);
  if (typeof rh === 'number') return Math.min(rh, 100);
  const dewPoint = reading(fields, COLUMN.dewPoint, 'dew point [°C]', -70, 70);
  if (typeof dewPoint === 'string') return `${rh}, and no dew point in its place (${dewPoint})`;
  return Math.min(100, (100 * saturationOverWaterPa(dewPoint)) / saturationOverWaterPa(temperatureC));
}

/**
 * Reads a year of hourly weather in the EPW form.
 * @param text - the whole file
 * @param options - id to give the climate, and the words its source asks to be shown
 * @returns the hourly climate; 29 February, if there, is left out
 * Source: EnergyPlus Auxiliary Programs, EPW data dictionary: eight header lines, then one line an hour; dry bulb,
 *   dew point and relative humidity in fields 7 to 9; missing 99.9, 99.9 and 999.
 * Valid: one value an hour, a whole year from 1 January.
 * Error: throws EpwError with every problem and its line (the first 50).
 */
export function parseEpw(text: string, options: { id?: string; attribution?: string } = {}): HourlyClimate {
  const problems: EpwProblem[] = [];
  const say = (line: number, problem: string, column = 1) => {
    if (problems.length < MOST_PROBLEMS) problems.push({ line, column, text: problem });
  };
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  while (lines.length > 0 && lines.at(-1)?.trim() === '') lines.pop();
  const location = (lines[0] ?? '').split(',');
  if (location[0]?.trim().toUpperCase() !== 'LOCATION') {
    say(1, `"${(lines[0] ?? '').slice(0, 30)}" found, a line beginning with LOCATION expected`);
  }
  const place = (column: number, what: string, low: number, high: number) => {
    const value = reading(location, column, what, low, high);
    if (typeof value === 'string') say(1, value, signOf(location, column));
    return value;
  };
  const latitude = place(6, 'latitude [°]', -90, 90);
  const elevation = place(9, 'elevation [m]', -500, 9000);
  const perHour = /^DATA PERIODS,\s*\d+\s*,\s*(\d+)/i.exec(lines[HEADER_LINES - 1] ?? '');
  if (!perHour) say(HEADER_LINES, 'a line beginning with DATA PERIODS expected');
  else if (perHour[1] !== '1')
    say(HEADER_LINES, `${perHour[1]} records an hour found, 1 expected`, perHour[0].length - perHour[1]!.length + 1);

  const temperatureC = new Float64Array(HOURS_PER_YEAR);
  const rhPct = new Float64Array(HOURS_PER_YEAR);
  let month = 1;
  let day = 1;
  let hour = 1;
  let at = 0;
  for (let i = HEADER_LINES; i < lines.length; i++) {
    const fields = (lines[i] ?? '').split(',');
    const [m, d, h] = [numberAt(fields, COLUMN.month), numberAt(fields, COLUMN.day), numberAt(fields, COLUMN.hour)];
    if (m === 2 && d === 29) continue;
    if (at >= HOURS_PER_YEAR) {
      say(i + 1, `more than ${HOURS_PER_YEAR} hours`);
      break;
    }
    if (!(m === month && d === day && h === hour)) {
      const wrong = m !== month ? COLUMN.month : d !== day ? COLUMN.day : COLUMN.hour;
      const expected = `month ${month}, day ${day}, hour ${hour} expected`;
      say(i + 1, `month ${m}, day ${d}, hour ${h} found, ${expected}`, signOf(fields, wrong));
      break;
    }
    if (fields.length > FIELDS) {
      say(
        i + 1,
        `${fields.length} values found, ${FIELDS} at most expected, with a point before the decimals`,
        signOf(fields, FIELDS),
      );
      at++;
      continue;
    }
    const t = reading(fields, COLUMN.dryBulb, 'dry bulb [°C]', -70, 60);
    if (typeof t === 'string') say(i + 1, t, signOf(fields, COLUMN.dryBulb));
    else {
      const rh = humidityOf(fields, t);
      if (typeof rh === 'string') say(i + 1, rh, signOf(fields, COLUMN.humidity));
      else [temperatureC[at], rhPct[at]] = [t, rh];
    }
    at++;
    hour = (hour % 24) + 1;
    if (hour === 1) {
      day = (day % MONTH_DAYS[month - 1]!) + 1;
      if (day === 1) month++;
    }
  }
  if (at < HOURS_PER_YEAR && problems.length === 0) {
    say(lines.length, `the file ends after ${at} hours, ${HOURS_PER_YEAR} expected`);
  }
  if (problems.length > 0 || typeof latitude === 'string' || typeof elevation === 'string') {
    throw new EpwError(problems);
  }
  const name = [location[1], location[2], location[3]].map((s) => s?.trim() ?? '').filter((s) => s !== '' && s !== '-');
  const source = location[4]?.trim() || 'source not named';
  const id = options.id ?? (location[5]?.trim() || 'hourly-file');
  return {
    kind: 'hourly',
    id,
    name: name.join(', ') || id,
    latitudeDeg: latitude,
    elevationM: elevation,
    temperatureC,
    rhPct,
    source: `hourly weather file (EPW), ${source}`,
    attribution: options.attribution ?? `Hourly weather: ${source}`,
  };
}
