import { expect, test } from 'vitest';
import { seekFault } from './run.ts';

const CASES = 1300;

test('1,300 households of one machine each keep every promise of the plan', () => {
  const { planned, fault } = seekFault({
    cases: CASES,
    seed: 20261025,
    stores: 16,
    machines: 1,
    wholeOneIn: 1e9,
    costlyOneIn: 3,
    twiceOneIn: 100,
  });
  expect(fault).toBeUndefined();
  expect(planned).toBe(CASES);
}, 900_000);
