/** Left out one by one, as long as it costs nothing. */

/** So many are tried one by one; a club's thousands are tried together first, and apart where that costs something. */
const ONE_BY_ONE = 32;
/** Plans that are made for this at most: what is left is one too many of what is made anyway. */
const MOST_TRIALS = 150;

/**
 * The leanest plan that is found.
 * @param plan - makes one without what is named
 * @param spareIn - names what of a plan may be spare
 * @param isAsGood - whether the first plan costs no more than the second
 */
export function leanest<Plan>(
  plan: (without: ReadonlySet<string>) => Plan,
  spareIn: (plan: Plan) => string[],
  isAsGood: (trial: Plan, best: Plan) => boolean,
): Plan {
  let without: ReadonlySet<string> = new Set();
  let best = plan(without);
  const needed = new Set<string>();
  const grouped = () => {
    const spare = spareIn(best).filter((one) => !needed.has(one));
    return spare.length > ONE_BY_ONE ? [spare] : spare.map((one) => [one]);
  };
  let groups = grouped();
  for (let trials = 0; groups.length > 0 && trials < MOST_TRIALS; trials++) {
    const group = groups.shift()!;
    const less = new Set([...without, ...group]);
    const trial = plan(less);
    if (isAsGood(trial, best)) [best, without] = [trial, less];
    else if (group.length > 1) {
      const half = group.length >> 1;
      groups.push(group.slice(0, half), group.slice(half));
    } else needed.add(group[0]!);
    // What is left out moves the rest, of which something may be spare where it is now.
    if (groups.length === 0) groups = grouped();
  }
  return best;
}
