import type { PlanStep } from '../season-plan.ts';

/**
 * Steps so that each stands behind all that it comes after, and otherwise as near to the given order as that allows.
 * @param steps - in the order wanted where `after` leaves it open
 * @returns the same steps, and the ids that form a ring where there is one (those stand last, in the given order)
 * Source: Kahn, "Topological sorting of large networks", Communications of the ACM 5 (1962) 558, always taking the first
 * step that is free.
 */
export function sortSteps(steps: readonly PlanStep[]): { steps: PlanStep[]; ring: string[] } {
  const position = new Map(steps.map((step, index) => [step.id, index]));
  const waiting = new Int32Array(steps.length);
  const followers: number[][] = steps.map(() => []);
  for (const [index, step] of steps.entries())
    for (const id of step.after) {
      const before = position.get(id);
      if (before === undefined) continue;
      waiting[index]! += 1;
      followers[before]!.push(index);
    }
  // Steps that are free, the first one at the end.
  const free: number[] = [];
  const release = (index: number) => {
    let at = free.length;
    while (at > 0 && free[at - 1]! < index) at -= 1;
    free.splice(at, 0, index);
  };
  for (let index = steps.length - 1; index >= 0; index--) if (waiting[index] === 0) free.push(index);
  const sorted: PlanStep[] = [];
  for (let index = free.pop(); index !== undefined; index = free.pop()) {
    sorted.push(steps[index]!);
    for (const follower of followers[index]!) {
      waiting[follower]! -= 1;
      if (waiting[follower] === 0) release(follower);
    }
  }
  const ring = steps.filter((_, index) => waiting[index]! > 0);
  return { steps: [...sorted, ...ring], ring: ring.map((step) => step.id) };
}
