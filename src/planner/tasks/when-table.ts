/** What can be said about a `when:` without a machine, by the table of facts. */
import type { When, WhenValue } from '../household.ts';
import { FACT_NAMES, FACTS, implied } from './fact-table.ts';
import type { FactValue } from './when.ts';

/**
 * The leaves of a `when`: path of each fact with the values it may have.
 * @returns for each path the values, any of which will do
 */
export function asked(when: When): Map<string, readonly FactValue[]> {
  const leaves = new Map<string, readonly FactValue[]>();
  const walk = (value: WhenValue, path: string): void => {
    if (Array.isArray(value)) leaves.set(path, value);
    else if (typeof value === 'object')
      for (const [name, inner] of Object.entries(value)) walk(inner, path === '' ? name : `${path}.${name}`);
    else leaves.set(path, [value]);
  };
  walk(when, '');
  return leaves;
}

/**
 * Paths that `when` asks for and no machine has.
 * @returns paths with dots, in the order found; the known ones are `FACT_NAMES`
 */
export function unknownFacts(when: When): string[] {
  return [...asked(when).keys()].filter((path) => !FACT_NAMES.includes(path));
}

/** A value that a known fact can never have. */
export interface UnknownValue {
  path: string;
  found: FactValue;
  /** What it can be, in words. */
  expected: readonly string[];
}

/**
 * Values that `when` asks of known facts and that they cannot have: "2-stroke" for engine.cycle, "yes" for a yes-or-no.
 * @param when - facts asked for
 */
export function unknownValues(when: When): UnknownValue[] {
  return [...asked(when)].flatMap(([path, values]) => {
    const row = FACTS.find((r) => r.path === path);
    if (!row) return [];
    const fits = (value: FactValue): boolean => {
      if (row.values === 'yes or no') return typeof value === 'boolean';
      return row.values.includes(String(value)) && typeof value === 'string';
    };
    const expected = row.values === 'yes or no' ? ['true', 'false'] : row.values;
    return values.filter((value) => !fits(value)).map((found) => ({ path, found, expected }));
  });
}

/** Conditions that must all hold: of a procedure, and of one of its steps. */
export type AllOf = readonly When[];

/**
 * A case in which `given` holds and none of `covers` does; undefined when every case is covered.
 *
 * Facts are taken as free of each other, so a case can be found that no real machine shows; the remedy is then to ask for less
 * in what covers it.
 * @param given - conditions that hold
 * @param covers - alternatives, each a list of conditions
 * @returns the case found, path by path
 */
export function uncovered(given: AllOf, covers: readonly AllOf[]): Map<string, FactValue> | undefined {
  const said = combined(given);
  const fixed = said && withImplied(said);
  if (fixed === undefined) return undefined;
  const alternatives = covers.map(combined).filter((leaves) => leaves !== undefined);
  const paths = [...new Set(alternatives.flatMap((leaves) => [...leaves.keys()]))];
  const domains = paths.map((path) => fixed.get(path) ?? domain(path));
  const search = (index: number, chosen: Map<string, FactValue>): Map<string, FactValue> | undefined => {
    if (alternatives.some((leaves) => holds(leaves, chosen))) return undefined;
    if (index === paths.length) return chosen;
    for (const value of domains[index]!) {
      const found = search(index + 1, new Map(chosen).set(paths[index]!, value));
      if (found) return found;
    }
    return undefined;
  };
  return search(0, new Map());
}

/**
 * Whether two lists of conditions can hold for the same machine.
 * @param a - conditions
 * @param b - conditions
 */
export function compatible(a: AllOf, b: AllOf): boolean {
  return combined([...a, ...b]) !== undefined;
}

function holds(leaves: Map<string, readonly FactValue[]>, chosen: Map<string, FactValue>): boolean {
  return [...leaves].every(([path, values]) => chosen.has(path) && values.includes(chosen.get(path)!));
}

/** The values left when all conditions hold; undefined when they exclude each other. */
function combined(whens: AllOf): Map<string, readonly FactValue[]> | undefined {
  const leaves = new Map<string, readonly FactValue[]>();
  for (const when of whens)
    for (const [path, values] of asked(when)) {
      const left = leaves.get(path)?.filter((value) => values.includes(value)) ?? values;
      if (left.length === 0) return undefined;
      leaves.set(path, left);
    }
  return leaves;
}

/** The leaves with what follows from them; undefined when that excludes something asked for. */
function withImplied(leaves: Map<string, readonly FactValue[]>): Map<string, readonly FactValue[]> | undefined {
  const all = new Map(leaves);
  for (const [path, values] of leaves) {
    if (values.includes('none') || values.includes(false)) continue;
    for (const [other, allowed] of implied(path)) {
      const left = (all.get(other) ?? allowed).filter((value) => (allowed as readonly FactValue[]).includes(value));
      if (left.length === 0) return undefined;
      all.set(other, left);
    }
  }
  return all;
}

/** Every value of a fact; of one that there is not, a value that nobody asks for. */
function domain(path: string): readonly FactValue[] {
  const values = FACTS.find((row) => row.path === path)?.values ?? [''];
  return values === 'yes or no' ? [true, false] : values;
}
