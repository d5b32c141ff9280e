/** Plain matching of `when:` against the facts of a machine. */
import type { When } from '../household.ts';

export type FactValue = string | boolean;
export interface Facts {
  [fact: string]: FactValue | Facts;
}

/**
 * Whether every value that `when` asks for is there.
 * @param when - facts asked for; an array means "any of"; an empty one matches every machine
 * @param facts - facts of one machine
 */
export function matches(when: When, facts: Facts): boolean {
  for (const name in when) {
    const asked = when[name]!;
    const found = facts[name];
    if (found === undefined) return false;
    if (Array.isArray(asked)) {
      if (!asked.includes(found as FactValue)) return false;
    } else if (typeof asked === 'object') {
      if (typeof found !== 'object' || !matches(asked, found)) return false;
    } else if (asked !== found) return false;
  }
  return true;
}
