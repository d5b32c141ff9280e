import type { Problem } from '../../../src/planner/agenda/problem.ts';

/** Days, by activity, that leave the fewest out, with the fewest sessions: found by trying every assignment. */
export interface Exhaustive {
  missing: number;
  missingMinutes: number;
  sessions: number;
}

/**
 * The best that can be done by one pair of hands where waits, if any, are longer than a session: each activity is tried on
 * each day of its window and left out, and a full assignment is judged by plain rules. It shares no code with the scheduler.
 */
export function exhaustive(problem: Problem): Exhaustive {
  const { activities, days } = problem;
  const n = activities.length;
  const day = new Array<number>(n).fill(-1);
  let best: Exhaustive = { missing: n + 1, missingMinutes: 0, sessions: 0 };

  const judge = () => {
    const minutes = new Array<number>(days.length).fill(0);
    const places = days.map(() => new Set<number>());
    const groups = days.map(() => new Map<number, readonly number[]>());
    let missing = 0;
    let missingMinutes = 0;
    for (let i = 0; i < n; i++) {
      const a = activities[i]!;
      const d = day[i]!;
      if (d < 0) {
        missing += 1;
        missingMinutes += a.minutes;
        continue;
      }
      minutes[d]! += a.minutes;
      places[d]!.add(a.place);
      if (a.stands.length > 0) groups[d]!.set(a.group, a.stands);
      for (const { of, lag } of a.after) {
        const other = day[of]!;
        if (other < 0 || other > d || (lag > 0 && other === d)) return;
      }
    }
    for (let d = 0; d < days.length; d++) {
      const trips = [...places[d]!].reduce((sum, p) => sum + problem.tripMinutes[p]!, 0);
      if (minutes[d]! + trips > days[d]!.length && places[d]!.size > 0) return;
      if (!standsSuffice([...groups[d]!.values()])) return;
    }
    const sessions = places.filter((p) => p.size > 0).length;
    const found = { missing, missingMinutes, sessions };
    if (
      missing - best.missing < 0 ||
      (missing === best.missing &&
        (missingMinutes < best.missingMinutes || (missingMinutes === best.missingMinutes && sessions < best.sessions)))
    ) {
      best = found;
    }
  };
  const tryFrom = (i: number) => {
    if (i === n) {
      judge();
      return;
    }
    const a = activities[i]!;
    for (let d = a.from; d <= a.to; d++) {
      if (a.fit && a.fit[d] === 0) continue;
      day[i] = d;
      tryFrom(i + 1);
    }
    day[i] = -1;
    tryFrom(i + 1);
  };
  tryFrom(0);
  return best;
}

function standsSuffice(wanted: readonly (readonly number[])[], taken: readonly number[] = []): boolean {
  const [first, ...rest] = wanted;
  if (!first) return true;
  return first.some((s) => !taken.includes(s) && standsSuffice(rest, [...taken, s]));
}
