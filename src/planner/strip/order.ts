/** An assembly as far as the order goes. */
export interface Node {
  id: string;
  /** Ids of what must come off before it. */
  behind: readonly string[];
}

/** What is known of the ways round: an order, or what stands in its way. */
export interface Order {
  /** Ids in the order they come off; empty when there is a cycle. */
  off: string[];
  /** Each cycle once, first id repeated at its end: ["a", "b", "a"]. */
  cycles: string[][];
}

/**
 * Everything that must come off for some assemblies: they and all they lie behind.
 * @param assemblies - all assemblies of the machine
 * @param wanted - ids to reach; unknown ones are left out
 * @returns ids, unordered
 */
export function mustComeOff(assemblies: readonly Node[], wanted: Iterable<string>): Set<string> {
  const byId = new Map(assemblies.map((a) => [a.id, a]));
  const off = new Set<string>();
  const queue = [...wanted];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    const assembly = byId.get(id);
    if (!assembly || off.has(id)) continue;
    off.add(id);
    queue.push(...assembly.behind);
  }
  return off;
}

/**
 * A removal order: each assembly after all it lies behind; among equals those of `first`, then the order of the content.
 * @param assemblies - all assemblies of the machine, in the order of the content
 * @param chosen - ids to order; what lies outside is taken as out of the way
 * @param first - ids that come first where nothing stands in front of them
 * @returns the order and the cycles
 * Source: topological sorting by in-degree, A. B. Kahn, Communications of the ACM 5 (1962) 558–562.
 */
export function removalOrder(
  assemblies: readonly Node[],
  chosen: ReadonlySet<string>,
  first: ReadonlySet<string> = new Set(),
): Order {
  const nodes = assemblies.filter((a) => chosen.has(a.id));
  const ranked = [...nodes.filter((a) => first.has(a.id)), ...nodes.filter((a) => !first.has(a.id))];
  const left = new Map(ranked.map((a) => [a.id, a.behind.filter((b) => chosen.has(b))] as const));
  const off: string[] = [];
  const cycles: string[][] = [];
  while (left.size > 0) {
    const next = ranked.find((a) => left.get(a.id)?.every((b) => !left.has(b)));
    if (next) {
      left.delete(next.id);
      off.push(next.id);
      continue;
    }
    const cycle = walkToCycle(left);
    cycles.push(cycle);
    for (const id of cycle) left.delete(id);
  }
  return { off: cycles.length > 0 ? [] : off, cycles };
}

/** Every assembly that is left waits for another that is left, so walking from one to the next must come round. */
function walkToCycle(left: ReadonlyMap<string, readonly string[]>): string[] {
  const path: string[] = [];
  let id = left.keys().next().value!;
  while (!path.includes(id)) {
    path.push(id);
    id = left.get(id)!.find((b) => left.has(b))!;
  }
  return [...path.slice(path.indexOf(id)), id];
}
