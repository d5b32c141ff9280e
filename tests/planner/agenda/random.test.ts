import { expect, test } from 'vitest';
import { randomFrom } from '../../../src/planner/agenda/random.ts';

const draw = (seed: number, count: number) => {
  const random = randomFrom(seed);
  return Array.from({ length: count }, () => random());
};

test('the same seed gives the same numbers, another one others', () => {
  expect(draw(7, 5)).toEqual(draw(7, 5));
  const all = [0, 1, 2, 3, -1, 2 ** 31].flatMap((seed) => draw(seed, 50));
  expect(new Set(all).size).toBe(all.length);
});

test('the numbers lie between 0 and 1, each twentieth of the way as often as the others, and each pair as well', () => {
  const numbers = draw(1, 40_000);
  expect(numbers.every((x) => x >= 0 && x < 1)).toBe(true);
  const counts = (cells: number[], size: number) => {
    const found = new Array<number>(size).fill(0);
    for (const cell of cells) found[cell]! += 1;
    const expected = cells.length / size;
    return found.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
  };
  // χ² with 19 and with 99 degrees of freedom is above 43.8 and 148.2 once in a thousand; handbook tables of χ².
  expect(
    counts(
      numbers.map((x) => Math.floor(x * 20)),
      20,
    ),
  ).toBeLessThan(43.8);
  const pairs = numbers.slice(1).map((x, i) => Math.floor(x * 10) * 10 + Math.floor(numbers[i]! * 10));
  expect(counts(pairs, 100)).toBeLessThan(148.2);
});
