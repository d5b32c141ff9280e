import { expect, test } from 'vitest';
import { seekFault } from './run.ts';

const CASES = 600;

test('600 households of up to four machines keep every promise of the plan', () => {
  const { planned, fault } = seekFault({
    cases: CASES,
    seed: 20270410,
    stores: 24,
    machines: 4,
    wholeOneIn: 1e9,
    costlyOneIn: 3,
    twiceOneIn: 50,
  });
  expect(fault).toBeUndefined();
  expect(planned).toBe(CASES);
}, 900_000);
