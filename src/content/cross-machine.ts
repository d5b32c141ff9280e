/** What only shows when the fields of a machine are held against each other, the other files and the day. */
import { stripProblems } from '../planner/strip/index.ts';
import { round, type Say, type Sound } from './cross-answers.ts';
import { unknownPlace } from './cross-household.ts';
import { type CrossContext, partProblems } from './cross-parts.ts';
import { seasonProblems } from './cross-season.ts';
import { type Loaded, problemAt, repeatedIds } from './loaded.ts';
import type { Path } from './path.ts';
import { nearest, type Problem } from './problem.ts';
import { asLeftProblems, futureProblems, inFuture, readingProblems } from './records.ts';
import { resolveWork } from './resolve-work.ts';
import type { MachineFile } from './schemas/machine.ts';

/** All problems of one machine that its schema cannot see. */
export function machineProblems({ source, checked }: Loaded<MachineFile>, context: CrossContext): Problem[] {
  const m = checked.sound;
  const problems: Problem[] = [];
  const say: Say = (path, what, fix) => problems.push(problemAt(source, path, what, fix));
  if (m.place !== undefined && !context.places.has(m.place))
    problems.push(unknownPlace(source, ['place'], m.place, [...context.places.keys()]));
  seasonProblems(m, say);
  partProblems(m, context, say);
  years(m, context.asOf, say);
  services(m, say);
  problems.push(...asLeftProblems(source, m.asLeft, m.assemblies, context.openItems));
  problems.push(...futureProblems(source, m, context.asOf), ...readingProblems(source, m.readings));
  for (const [path, day] of pastDays(m))
    if (day > context.asOf) problems.push(inFuture(source, path, day, context.asOf));
  problems.push(...repeatedIds(source, 'services', m.services), ...repeatedIds(source, 'paperwork', m.paperwork));
  // A list that is itself at fault is left out of what is sound; names in it would all seem unknown.
  const written = typeof source.data === 'object' && source.data !== null ? source.data : {};
  if ((['assemblies', 'jobs'] as const).every((list) => !(list in written) || m[list] !== undefined)) {
    const strip = stripProblems(resolveWork(m));
    const twice = strip.filter((p) => p.message.includes('a second'));
    // A name that stands twice hides another: what is said of cycles and missing names would be beside the point.
    for (const { path, message } of twice.length > 0 ? twice : strip) {
      const parts = path.split('.').map((p) => (/^\d+$/.test(p) ? Number(p) : p === 'assemblyId' ? 'assembly' : p));
      say(parts, message, stripFix(message));
    }
  }
  return problems;
}

function stripFix(message: string): string {
  if (message.includes('->')) return 'Take one of the names out of its list.';
  if (message.includes('a second')) return 'Give one of them another id.';
  const [, found, list] = /found the \w+ "([^"]*)", expected one of (.*)$/.exec(message) ?? [];
  const near = found && list ? nearest(found, list.split(', ')) : undefined;
  return near ? `Write ${near}.` : 'Write one of these, or add what is missing.';
}

function years(m: Sound, asOf: string, say: Say): void {
  const now = Number(asOf.slice(0, 4));
  if (m.year !== undefined && m.year > now + 1)
    say(['year'], `found ${m.year}, expected a model year up to ${now + 1}`, 'Correct the year.');
  for (const [i, t] of (m.tyres ?? []).entries()) {
    if (t.madeYear !== undefined && t.madeYear > now)
      say(
        ['tyres', i, 'madeYear'],
        `found ${t.madeYear}, which is in the future, expected a year up to ${now}`,
        'The last two digits of the four in the date code are the year.',
      );
  }
}

function* pastDays(m: Sound): Generator<[Path, string]> {
  for (const [i, s] of (m.services ?? []).entries())
    if (s.lastDone?.date !== undefined) yield [['services', i, 'lastDone', 'date'], s.lastDone.date];
  if (typeof m.fuel === 'object' && m.fuel.boughtOn !== undefined) yield [['fuel', 'boughtOn'], m.fuel.boughtOn];
  if (typeof m.cooling === 'object' && m.cooling.lastChanged !== undefined)
    yield [['cooling', 'lastChanged'], m.cooling.lastChanged];
}

function services(m: Sound, say: Say): void {
  for (const [i, s] of (m.services ?? []).entries()) {
    const { odometer, engineHours } = s.lastDone ?? {};
    if (odometer !== undefined && m.odometer !== undefined && odometer > m.odometer)
      say(
        ['services', i, 'lastDone', 'odometer'],
        `found ${round(odometer)} km, more than the machine's ${round(m.odometer)} km, expected less`,
        'Correct one of the two.',
      );
    if (engineHours !== undefined && m.engineHours !== undefined && engineHours > m.engineHours)
      say(
        ['services', i, 'lastDone', 'engineHours'],
        `found ${round(engineHours)} h, more than the machine's ${round(m.engineHours)} h, expected less`,
        'Correct one of the two.',
      );
  }
}
