import { expect, test } from 'vitest';
import { logOf, textOfLog } from '../../src/browser/planner/log-entries.ts';

const reading = { kind: 'readings', date: '2026-12-05', volts: 12.45, temperatureC: 0, restedH: 400 };
const done = { kind: 'done', step: 'lay-up', date: '2026-11-01' };

test('a log comes back as it was kept', () => {
  const text = JSON.stringify([reading, done]);
  expect(logOf(text)).toEqual({ entries: [reading, done], unread: [] });
  expect(textOfLog(logOf(text))).toBe(text);
  expect(textOfLog(logOf(''))).toBe('');
});

test('a log of the first format is read as what it said', () => {
  const text = JSON.stringify([
    { ...reading, kind: 'reading' },
    { kind: 'charged', date: '2026-12-06' },
    { kind: 'lay-up', date: '2026-11-01' },
    { kind: 'start-up', date: '2027-03-20' },
  ]);
  expect(logOf(text)).toEqual({
    entries: [
      reading,
      { kind: 'charged', date: '2026-12-06', toPct: 100 },
      done,
      { kind: 'done', step: 'start-up', date: '2027-03-20' },
    ],
    unread: [],
  });
});

test.each([
  ['a kind of a newer version', JSON.stringify([{ kind: 'weighed', date: '2026-12-05', kg: 12 }, done]), [done]],
  ['a reading without its volts', JSON.stringify([{ ...reading, volts: null }]), []],
  ['no list', JSON.stringify({ note: 'mine' }), []],
  ['a word, a number, nothing', '["later",7,null]', []],
  ['half a file', `[${JSON.stringify(done)},{"kin`, []],
])('%s stays with the log through every later entry', (_, text, sound) => {
  const log = logOf(text);
  expect(log.entries).toEqual(sound);
  const later = textOfLog({ ...log, entries: [...log.entries, { ...done, kind: 'done', date: '2026-11-09' }] });
  expect(logOf(later).unread).toEqual(log.unread);
  expect(log.unread).not.toEqual([]);
});
