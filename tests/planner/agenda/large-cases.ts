import fc from 'fast-check';
import type { Activity, Problem } from '../../../src/planner/agenda/problem.ts';

/** Up to sixty steps of four machines: two pairs of hands, a bench, stands, chargers that stay taken, long jobs. */
export const largeProblem: fc.Arbitrary<Problem> = fc
  .record({
    days: fc.array(fc.record({ gap: fc.integer({ min: 1, max: 4 }), length: fc.constantFrom(60, 90, 120, 240, 480) }), {
      minLength: 3,
      maxLength: 25,
    }),
    hands: fc.integer({ min: 1, max: 2 }),
    stands: fc.integer({ min: 1, max: 2 }),
    chargers: fc.integer({ min: 1, max: 2 }),
    unfit: fc.array(fc.nat(24), { maxLength: 8 }),
    steps: fc.array(
      fc.record({
        minutes: fc.constantFrom(0, 5, 10, 20, 45, 90, 200, 600),
        from: fc.double({ min: 0, max: 1, noNaN: true }),
        to: fc.double({ min: 0, max: 1, noNaN: true }),
        group: fc.nat(3),
        special: fc.constantFrom('', '', '', 'stand', 'charger', 'bench', 'dry', 'split'),
        wait: fc.constantFrom(0, 0, 0, 60, 720, 4320),
        follows: fc.array(fc.nat(59), { maxLength: 2 }),
      }),
      { minLength: 13, maxLength: 60 },
    ),
  })
  .map(({ days, hands, stands, chargers, unfit, steps }): Problem => {
    let date = 0;
    const last = days.length - 1;
    const fit = Uint8Array.from(days, (_, d) => (unfit.includes(d) ? 0 : 1));
    return {
      capacity: [hands, 1],
      days: days.map(({ gap, length }) => {
        date += gap;
        return { start: date * 1440 + 600, length };
      }),
      tripMinutes: [0, 10, 15, 0],
      activities: steps.map((s, i): Activity => {
        const ends = [Math.round(s.from * last), Math.round(s.to * last)].sort((a, b) => a - b);
        const before = [...new Set(s.follows)].filter((of) => of < i);
        return {
          minutes: s.minutes,
          demand: [1, s.special === 'bench' ? 1 : 0],
          after: before.map((of) => ({ of, lag: steps[of]!.wait })),
          from: ends[0]!,
          to: ends[1]!,
          fit: s.special === 'dry' ? fit : undefined,
          group: s.group,
          stands: s.special === 'stand' ? [...Array(stands).keys()] : [],
          chargers: s.special === 'charger' ? [...Array(chargers).keys()] : [],
          chargeMinutes: s.wait,
          place: s.group,
          splittable: s.special === 'split',
        };
      }),
    };
  });
