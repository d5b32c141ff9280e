import { expect, test } from 'vitest';
import { seekFault } from './run.ts';

const CASES = 100;

test('100 households keep every promise of the plan with assumptions ranked and longer seasons tried', () => {
  const { planned, fault } = seekFault({
    cases: CASES,
    seed: 20280229,
    stores: 8,
    machines: 2,
    wholeOneIn: 1,
    costlyOneIn: 2,
    twiceOneIn: 10,
  });
  expect(fault).toBeUndefined();
  expect(planned).toBe(CASES);
}, 900_000);
