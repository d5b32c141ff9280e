import { expect, test } from 'vitest';
import { seekFault } from './run.ts';

test('600 households of up to four machines keep every promise of the plan', () => {
  const fault = seekFault({
    cases: 600,
    seed: 20270410,
    stores: 24,
    machines: 4,
    wholeOneIn: 1e9,
    costlyOneIn: 3,
    twiceOneIn: 50,
  });
  expect(fault).toBeUndefined();
}, 900_000);
