import { expect, test } from 'vitest';
import { chargeAsked, chargeHoursText, chargeTimeText } from '../../src/planner/charging-time.ts';

test('hours are said up to the next half, never short of what is needed', () => {
  const said = [0, 0.01, 0.5, 0.50001, 12.5, 12.6, 13.01].map((h) => chargeHoursText(h, 'en-GB'));
  expect(said).toEqual(['0 h', '0.5 h', '0.5 h', '1 h', '12.5 h', '13 h', '13.5 h']);
  expect(chargeHoursText(12.5, 'de-AT')).toBe('12,5 h');
  // A sum of tenths that is a hair above what it should be is not half an hour more.
  expect(chargeHoursText(0.1 + 0.2 + 0.2, 'en-GB')).toBe('0.5 h');
  for (const none of [-0.1, Number.NaN]) expect(() => chargeHoursText(none, 'en-GB')).toThrow(`found ${none}`);
});

test('the most it can take is said where that is another figure', () => {
  expect(chargeTimeText(12.4, 13.9, 'en-GB')).toBe('12.5 h (at most 14 h)');
  expect(chargeTimeText(12.1, 12.4, 'en-GB')).toBe('12.5 h');
});

test('where nothing is expected to be put back, the most is got ready for', () => {
  const charge = { ampHours: 0, ampHoursMost: 5.3, hours: 0, hoursMost: 0.4 };
  expect(chargeAsked(charge)).toEqual({ ampHours: 5.3, ampHoursMost: 5.3, hours: 0.4, hoursMost: 0.4 });
  expect(chargeAsked({ ...charge, ampHours: 0.1, hours: 0.01 }).ampHours).toBe(0.1);
  expect(chargeTimeText(0, 0.4, 'en-GB')).toBe('0.5 h at most');
  expect(chargeTimeText(0, 0, 'en-GB')).toBe('0 h');
});
