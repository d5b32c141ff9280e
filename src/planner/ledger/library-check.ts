import type { Procedure, ProcedureStep } from '../household.ts';
import { AMOUNTS } from '../tasks/amount-table.ts';
import { amountsOf } from '../tasks/amounts.ts';
import type { FactValue } from '../tasks/when.ts';
import { type AllOf, compatible, uncovered } from '../tasks/when-table.ts';
import { itemKey, spotOf } from './build.ts';
import type { LedgerProblem } from './problem.ts';

interface Place {
  procedure: Procedure;
  step: ProcedureStep;
  index: number;
  whens: AllOf;
}

/**
 * What can be said against a library of procedures without any machine: an item that is opened in a case in which no start-up
 * step closes it, an item that is closed and never opened, an amount that is named where it does not exist, and an `after`
 * that names nothing or runs in a ring.
 *
 * A closing step may stand for an item that only a replaced procedure opened: it is then never on a sheet, and a user who
 * writes a shorter lay-up need not rewrite the start-up.
 * @param procedures - library and own together, as `mergeProcedures` gives them
 * @returns all problems, by file and line
 */
export function ledgerProblems(procedures: readonly Procedure[]): LedgerProblem[] {
  const places = procedures.flatMap(placesOf);
  const openers = [...places, ...procedures.flatMap((one) => (one.replaces ? placesOf(one.replaces) : []))];
  return [
    ...places.flatMap((place) => place.step.opens.flatMap((open) => neverClosed(place, open.item, places))),
    ...places.flatMap((place) => place.step.closes.flatMap((item) => neverOpened(place, item, openers))),
    ...places.flatMap(missingAmounts),
    ...places.flatMap((place) => unknownAfter(place, places)),
    ...rings(places),
  ].sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line));
}

function placesOf(procedure: Procedure): Place[] {
  return procedure.steps.map((step, index) => ({ procedure, step, index, whens: [procedure.when, step.when] }));
}

function neverClosed(place: Place, item: string, places: readonly Place[]): LedgerProblem[] {
  const closers = places.filter(
    (other) =>
      other.procedure.phase === 'start-up' && other.step.each === place.step.each && other.step.closes.includes(item),
  );
  const gap = uncovered(
    place.whens,
    closers.map((closer) => closer.whens),
  );
  if (!gap) return [];
  const closing = closers.map((closer) => stepName(closer)).join(', ');
  return [
    problem(place, 'opens', item, {
      what:
        closers.length === 0
          ? `found that it opens "${item}" and no start-up step closes it`
          : `found that it opens "${item}" in a case in which no start-up step closes it (${inWords(gap)}; closed by ${closing})`,
      fix: `Add "closes: [${item}]" to a start-up step that applies wherever this step does${place.step.each === undefined ? '' : ` and has each: ${place.step.each}`}.`,
    }),
  ];
}

function neverOpened(place: Place, item: string, openers: readonly Place[]): LedgerProblem[] {
  // What the strip-down takes off is opened by the machine's own assemblies.
  if (item.startsWith('assembly:')) return [];
  const opener = openers.some(
    (other) =>
      other.step.each === place.step.each &&
      other.step.opens.some((open) => open.item === item) &&
      compatible(other.whens, place.whens),
  );
  if (opener) return [];
  return [
    problem(place, 'closes', item, {
      what: `found that it closes "${item}" and no step opens it`,
      fix: `Write the item as the step that opens it does, or take it out of "closes".`,
    }),
  ];
}

function missingAmounts(place: Place): LedgerProblem[] {
  return [...new Set(amountsOf(place.step))].flatMap((name) => {
    const row = AMOUNTS.find((candidate) => candidate.name === name);
    if (!row) return [];
    const gap = uncovered(place.whens, [[row.when]]);
    if (!gap) return [];
    return [
      problem(place, 'after', '', {
        what: `found the amount {${name}} in a step that also applies where there is none (${inWords(gap)})`,
        fix: `Add to the step's "when": ${JSON.stringify(row.when)}.`,
      }),
    ];
  });
}

function unknownAfter(place: Place, places: readonly Place[]): LedgerProblem[] {
  return place.step.after
    .filter(
      (name) =>
        name === place.procedure.id ||
        name === stepName(place) ||
        !places.some((other) => other.procedure.id === name || stepName(other) === name),
    )
    .map((name) =>
      problem(place, 'after', name, {
        what:
          name === place.procedure.id || name === stepName(place)
            ? `found "${name}" in "after", which the step itself is or belongs to, expected what comes before it`
            : `found "${name}" in "after", expected the id of a procedure or of a step (procedure.step)`,
        fix: 'Correct the name, or take it away.',
      }),
    );
}

/** Steps of one phase whose `after` leads back to themselves. */
function rings(places: readonly Place[]): LedgerProblem[] {
  const before = new Map(places.map((place) => [place, placesBefore(place, places)]));
  const state = new Map<Place, 'open' | 'done'>();
  const found: LedgerProblem[] = [];
  const visit = (place: Place, path: readonly Place[]): void => {
    if (state.get(place) === 'done') return;
    if (state.get(place) === 'open') {
      const ring = [...path.slice(path.indexOf(place)), place].map(stepName).join(' after ');
      found.push(
        problem(place, 'after', '', {
          what: `found a ring: ${ring}`,
          fix: 'Take one of these out of "after".',
        }),
      );
      return;
    }
    state.set(place, 'open');
    for (const other of before.get(place)!) visit(other, [...path, place]);
    state.set(place, 'done');
  };
  for (const place of places) visit(place, []);
  return found;
}

function placesBefore(place: Place, places: readonly Place[]): Place[] {
  return places.filter(
    (other) =>
      other !== place &&
      compatible(other.whens, place.whens) &&
      ((other.procedure === place.procedure && other.index < place.index) ||
        place.step.after.includes(stepName(other)) ||
        (place.step.after.includes(other.procedure.id) && other.procedure !== place.procedure)),
  );
}

function problem(
  { procedure, step, index }: Place,
  list: 'opens' | 'closes' | 'after',
  item: string,
  said: { what: string; fix: string },
): LedgerProblem {
  const field = `steps.${index + 1} (${step.id})${item === '' ? '' : `.${list}`}`;
  return { file: procedure.file, ...spotOf(procedure, index, itemKey(step, index, list, item)), field, item, ...said };
}

function stepName({ procedure, step }: Pick<Place, 'procedure' | 'step'>): string {
  return `${procedure.id}.${step.id}`;
}

function inWords(gap: ReadonlyMap<string, FactValue>): string {
  if (gap.size === 0) return 'on every machine';
  return [...gap].map(([path, value]) => `${path}: ${value}`).join(', ');
}
