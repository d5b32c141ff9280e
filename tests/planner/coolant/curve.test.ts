/**
 * The curve between the rows of a table, worked by hand from its definition: inner slopes by the weighted harmonic mean of the
 * neighbours' rises, (w₁ + w₂)/(w₁/a + w₂/b) with w₁ = 2h₊ + h₋ and w₂ = h₊ + 2h₋; end slopes by three points, kept to the sign of
 * the end's own rise and to three times it where the next rise turns (Fritsch and Butland 1984; Moler, Numerical Computing with
 * MATLAB, ch. 3, from memory).
 */
import { expect, test } from 'vitest';
import { readCurve } from '../../../src/planner/coolant/curve.ts';

type Points = [number, number][];

test.each<[string, Points, number, number]>([
  // Rises 1 and 3: slopes 0, 1.5 and 4.
  [
    'a rise that steepens, first piece',
    [
      [0, 0],
      [1, 1],
      [2, 4],
    ],
    0.5,
    0.3125,
  ],
  [
    'a rise that steepens, last piece',
    [
      [0, 0],
      [1, 1],
      [2, 4],
    ],
    1.5,
    2.1875,
  ],
  // Rises 1 and −1: slope 2 at the end, 0 at the turn.
  [
    'a turn',
    [
      [0, 0],
      [1, 1],
      [2, 0],
    ],
    0.5,
    0.75,
  ],
  // Rises 1 and −10: three points give 6.5, held at 3.
  [
    'a turn so steep that the end is held',
    [
      [0, 0],
      [1, 1],
      [2, -9],
    ],
    0.5,
    0.875,
  ],
  [
    'the same from the other end',
    [
      [0, -9],
      [1, 1],
      [2, 0],
    ],
    1.5,
    0.875,
  ],
  // Rises 1 and 4: three points give −0.5, against the rise: 0 at the end; 6/(3 + 0.75) = 1.6 inside.
  [
    'an end that would fall where its piece rises',
    [
      [0, 0],
      [1, 1],
      [2, 5],
    ],
    0.5,
    0.5 - 1.6 / 8,
  ],
  // Steps 1 and 2, rises 1 and 3: slopes 1/3, 27/19 and 13/3.
  [
    'uneven steps, first piece',
    [
      [0, 0],
      [1, 1],
      [3, 7],
    ],
    0.5,
    0.5 + 1 / 24 - 27 / 19 / 8,
  ],
  [
    'uneven steps, last piece',
    [
      [0, 0],
      [1, 1],
      [3, 7],
    ],
    2,
    4 + 27 / 19 / 4 - 13 / 12,
  ],
  // A straight line stays one.
  [
    'a straight line',
    [
      [0, 1],
      [1, 3],
      [3, 7],
      [4, 9],
    ],
    2.5,
    6,
  ],
  // A quarter into the first piece of the first case: 1·t²(3 − 2t) + 1.5·t²(t − 1).
  [
    'a quarter of a piece',
    [
      [0, 0],
      [1, 1],
      [2, 4],
    ],
    0.25,
    0.15625 - (1.5 * 3) / 64,
  ],
])('%s', (_, points, x, y) => {
  expect(readCurve(points, x)).toBeCloseTo(y, 12);
});

test('rows are read as they stand, and nothing outside them', () => {
  const points: Points = [
    [0.5, 2],
    [1, 5],
    [2, 4],
  ];
  for (const [x, y] of points) expect(readCurve(points, x)).toBeCloseTo(y, 12);
  for (const x of [0.49, 2.01, Number.NaN])
    expect(() => readCurve(points, x)).toThrow(`table: found ${x}, expected 0.5 to 2, the range of the table`);
});
