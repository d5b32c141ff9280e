/** Days and years so far off that another was meant. */
import { addMonths } from '../planner/dates.ts';
import type { Say, Sound } from './cross-answers.ts';
import { dateCodeFix, looksLikeCode } from './date-code.ts';
import type { HouseholdFile } from './schemas/household.ts';
import type { RecordFile } from './schemas/record.ts';
import { type Known, knownEntries } from './sound.ts';

/** How far from the day of the plan something can lie [years]; common practice, and generous. */
const FAR = {
  /** A season that is planned, days away: a file that was not touched for years is still read. */
  season: { back: 25, ahead: 25 },
  /** What was measured and ticked: batteries and their records do not last so long. */
  ticked: { back: 20, ahead: 0 },
  /** What was noted and laid aside. */
  noted: { back: 60, ahead: 0 },
  /** Papers run out years ago, or never. */
  paper: { back: 20, ahead: 100 },
  /** Petrol that was bought before is no petrol. */
  fuel: { back: 15, ahead: 0 },
  /** A starting battery. */
  battery: { back: 40, ahead: 0 },
} as const;

/** A tyre may have lain in a shop before it was fitted to a new machine [years]. */
const TYRE_BEFORE_MACHINE = 5;

/** Machines of a model year are sold from the year before [years]. */
const BUILT_BEFORE_YEAR = 1;

function isFar(day: string, asOf: string, { back, ahead }: { back: number; ahead: number }): boolean {
  return day < addMonths(asOf, -12 * back) || (ahead > 0 && day > addMonths(asOf, 12 * ahead));
}

function far(day: string, asOf: string, { back, ahead }: { back: number; ahead: number }): string {
  const within = ahead === 0 ? `at most ${back} years before` : `from ${back} years before to ${ahead} years after`;
  return `found ${day}, which is far off, expected a day ${within} ${asOf}`;
}

/** Days of a season that are far off; the pair is not held against each other then. */
export function farSeason({ lastUse, firstUse }: Sound, asOf: string, say: Say): boolean {
  const days = Object.entries({ lastUse, firstUse }).filter(
    (pair): pair is [string, string] => pair[1] !== undefined && isFar(pair[1], asOf, FAR.season),
  );
  for (const [field, day] of days) say([field], far(day, asOf, FAR.season), 'Correct the year.');
  return days.length > 0;
}

/** Years of a machine's file that lie in the future, before it was built, or far off. */
export function yearProblems(m: Sound, asOf: string, say: Say): void {
  const now = Number(asOf.slice(0, 4));
  if (m.year !== undefined && m.year > now + 1)
    say(['year'], `found ${m.year}, expected a model year up to ${now + 1}`, 'Correct the year.');
  const built = m.year === undefined || m.year > now + 1 ? undefined : m.year;
  for (const [i, { madeYear }] of knownEntries(m.tyres)) {
    if (madeYear === undefined) continue;
    const code = looksLikeCode(madeYear, now) ? dateCodeFix(madeYear) : undefined;
    const fix = code ?? 'The last two digits of the four in the date code are the year.';
    if (madeYear > now)
      say(['tyres', i, 'madeYear'], `found ${madeYear}, which is in the future, expected a year up to ${now}`, fix);
    else if (built !== undefined && madeYear < built - TYRE_BEFORE_MACHINE)
      say(['tyres', i, 'madeYear'], `found ${madeYear} on a machine of ${built}, expected a year after it`, fix);
    else if (code !== undefined) say(['tyres', i, 'madeYear'], `found ${madeYear}, expected the year it was made`, fix);
  }
  const bought = typeof m.battery === 'object' ? m.battery.boughtYear : undefined;
  if (bought !== undefined && (bought > now || bought < now - FAR.battery.back))
    say(
      ['battery', 'boughtYear'],
      bought > now
        ? `found ${bought}, which is in the future, expected a year up to ${now}`
        : `found ${bought}, expected a year from ${now - FAR.battery.back} to ${now}`,
      'Correct the year.',
    );
  for (const [path, day] of pastDays(m)) {
    if (day > asOf)
      say(
        path,
        `found ${day}, which is in the future, expected a day up to ${asOf}`,
        'Correct the date: this is for what has been done.',
      );
    else if (built !== undefined && Number(day.slice(0, 4)) < built - BUILT_BEFORE_YEAR)
      say(path, `found ${day} on a machine of ${built}, expected a day after it was built`, 'Correct one of the two.');
    else if (path.at(-1) === 'boughtOn' && isFar(day, asOf, FAR.fuel))
      say(path, far(day, asOf, FAR.fuel), 'Correct the year.');
  }
  for (const [i, { date }] of knownEntries(m.paperwork))
    if (date !== undefined && isFar(date, asOf, FAR.paper))
      say(['paperwork', i, 'date'], far(date, asOf, FAR.paper), 'Correct the year.');
}

function* pastDays(m: Sound): Generator<[(string | number)[], string]> {
  for (const [i, s] of knownEntries(m.services))
    if (s.lastDone?.date !== undefined) yield [['services', i, 'lastDone', 'date'], s.lastDone.date];
  if (typeof m.fuel === 'object' && m.fuel.boughtOn !== undefined) yield [['fuel', 'boughtOn'], m.fuel.boughtOn];
  if (typeof m.cooling === 'object' && m.cooling.lastChanged !== undefined)
    yield [['cooling', 'lastChanged'], m.cooling.lastChanged];
}

/** What of a record has a day. */
export type Dated = Pick<RecordFile, 'readings' | 'charged' | 'done' | 'skipped' | 'notes' | 'asLeft'>;

/** Things that were written down: they lie neither in the future nor decades back. */
export function recordedProblems(data: Known<Dated>, asOf: string, say: Say): void {
  const lists = [
    ['readings', 'date', FAR.ticked],
    ['charged', 'date', FAR.ticked],
    ['done', 'date', FAR.ticked],
    ['skipped', 'date', FAR.ticked],
    ['notes', 'date', FAR.noted],
    ['asLeft', 'since', FAR.noted],
  ] as const;
  for (const [name, key, window] of lists) {
    const entries: readonly ({ date?: string | undefined; since?: string | undefined } | undefined)[] | undefined =
      data[name];
    for (const [i, entry] of knownEntries(entries)) {
      const day = entry[key];
      if (day === undefined) continue;
      if (day > asOf)
        say(
          [name, i, key],
          `found ${day}, which is in the future, expected a day up to ${asOf}`,
          'Correct the date: this is for what has been done.',
        );
      else if (isFar(day, asOf, window)) say([name, i, key], far(day, asOf, window), 'Correct the year.');
    }
  }
}

/** Days away that no plan reaches. */
export function farAway({ away }: Known<HouseholdFile>, asOf: string, say: Say): void {
  for (const [i, period] of knownEntries(away))
    for (const end of ['from', 'to'] as const) {
      const day = period[end];
      if (day !== undefined && isFar(day, asOf, FAR.season))
        say(['away', i, end], far(day, asOf, FAR.season), 'Correct the year.');
    }
}
