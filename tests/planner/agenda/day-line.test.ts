/** The use of a day's hands and benches, against a list of its minutes. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DayLine } from '../../../src/planner/agenda/day-line.ts';

const MINUTES = 40;
const CAPACITY = [2, 1];

/** Units of each resource that are taken in each minute. */
class MinuteList {
  readonly use = Array.from({ length: 3 * MINUTES }, () => [0, 0]);

  fits = (minute: number, demand: readonly number[]) =>
    demand.every((units, r) => units === 0 || this.use[minute]![r]! + units <= CAPACITY[r]!);

  earliest(ready: number, minutes: number, demand: readonly number[]): number {
    let start = ready;
    // What takes no time has to find the units free at its minute all the same.
    while (!this.use.slice(start, start + Math.max(1, minutes)).every((_, k) => this.fits(start + k, demand)))
      start += 1;
    return start;
  }

  take(start: number, minutes: number, demand: readonly number[]): void {
    for (const use of this.use.slice(start, start + minutes)) {
      for (const [r, units] of demand.entries()) use[r]! += units;
    }
  }

  gapEnd(start: number, demand: readonly number[], limit: number): number {
    let end = start;
    while (end < limit && this.fits(end, demand)) end += 1;
    return end;
  }
}

const work = fc.record({
  ready: fc.nat(MINUTES),
  minutes: fc.integer({ min: 0, max: 10 }),
  demand: fc.constantFrom([1, 0], [1, 1], [2, 0], [0, 1]),
});

test('work begins at the first minute from which on all that it needs is free', () => {
  fc.assert(
    fc.property(fc.array(work, { maxLength: 8 }), work, (some, one) => {
      const line = new DayLine(CAPACITY);
      const list = new MinuteList();
      let last = 0;
      for (const { ready, minutes, demand } of some) {
        const start = line.earliest(ready, minutes, demand);
        expect(start).toBe(list.earliest(ready, minutes, demand));
        line.take(start, minutes, demand);
        list.take(start, minutes, demand);
        last = Math.max(last, start + minutes);
      }
      expect(line.last).toBe(last);
      const start = list.earliest(one.ready, 1, one.demand);
      const limit = start + one.minutes;
      expect(line.firstGap(one.ready, one.demand, limit)).toEqual({
        start,
        end: list.gapEnd(start, one.demand, limit),
      });
    }),
    { numRuns: 500 },
  );
});
