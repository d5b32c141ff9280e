import { expect, test } from 'vitest';
import { leanest } from '../../../src/planner/battery/lean.ts';

/** Things in order; each but the first is spare once the one before it is gone, and what is needed costs something. */
const chain = (names: readonly string[], needed: readonly string[] = []) => {
  let made = 0;
  const left = leanest(
    (without) => {
      made++;
      const kept = names.filter((name) => !without.has(name));
      return { kept, cost: needed.filter((name) => without.has(name)).length };
    },
    ({ kept }) => kept.filter((name) => names.indexOf(name) === 0 || !kept.includes(names[names.indexOf(name) - 1]!)),
    (trial, best) => trial.cost <= best.cost,
  ).kept;
  return { left, made };
};

test('what becomes spare once something else is left out is left out as well', () => {
  expect(chain(['a', 'b', 'c']).left).toEqual([]);
  expect(chain(['a', 'b', 'c'], ['b']).left).toEqual(['b', 'c']);
});

test('what is needed is tried once, and of many the spare are found among it', () => {
  expect(chain(['a'], ['a'])).toEqual({ left: ['a'], made: 2 });
  const many = Array.from({ length: 100 }, (_, i) => `n${i}`);
  const all = leanest(
    (without) => many.filter((name) => !without.has(name)),
    (kept) => [...kept],
    (trial) => trial.includes('n17') && trial.includes('n70'),
  );
  expect(all).toEqual(['n17', 'n70']);
});

test('however much is spare, it ends', () => {
  const endless = chain(Array.from({ length: 400 }, (_, i) => `n${i}`));
  expect(endless.made).toBeLessThan(200);
  expect(endless.left.length).toBeGreaterThan(0);
});
