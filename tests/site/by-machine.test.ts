/** A session's list, machine by machine. */
import { expect, test } from 'vitest';
import { groupedByMachine } from '../../src/site/by-machine.ts';

test('steps of two machines that take turns stand under their machines, each in its own order, none lost', () => {
  const refs = ['a 1', 'b 1', 'a 2', 'c 1', 'b 2', 'a 3'].map((text) => {
    const [machine, step] = text.split(' ') as [string, string];
    return { machine, step };
  });
  expect(groupedByMachine(refs)).toEqual([
    { machine: 'a', steps: ['1', '2', '3'] },
    { machine: 'b', steps: ['1', '2'] },
    { machine: 'c', steps: ['1'] },
  ]);
  expect(groupedByMachine([])).toEqual([]);
});
