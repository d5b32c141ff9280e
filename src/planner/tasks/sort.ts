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
  const waiting = steps.map((step) => step.after.filter((id) => position.has(id)).length);
  const followers = new Map<string, number[]>();
  for (const [index, step] of steps.entries())
    for (const id of step.after) if (position.has(id)) followers.set(id, [...(followers.get(id) ?? []), index]);
  const free = waiting.flatMap((count, index) => (count === 0 ? [index] : []));
  const sorted: PlanStep[] = [];
  while (free.length > 0) {
    const index = free.splice(free.indexOf(Math.min(...free)), 1)[0]!;
    const step = steps[index]!;
    sorted.push(step);
    for (const follower of followers.get(step.id) ?? []) {
      waiting[follower]! -= 1;
      if (waiting[follower] === 0) free.push(follower);
    }
  }
  const ring = steps.filter((step) => !sorted.includes(step));
  return { steps: [...sorted, ...ring], ring: ring.map((step) => step.id) };
}
