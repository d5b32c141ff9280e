import { expect, test } from 'vitest';
import { seekFault } from './run.ts';

test('1,300 households of one machine each keep every promise of the plan', () => {
  const fault = seekFault({
    cases: 1300,
    seed: 20261025,
    stores: 16,
    machines: 1,
    wholeOneIn: 1e9,
    costlyOneIn: 3,
    twiceOneIn: 100,
  });
  expect(fault).toBeUndefined();
}, 900_000);
