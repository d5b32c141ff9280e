import { expect, test } from 'vitest';
import { EpwError, MONTH_DAYS, parseEpw } from '../../../src/planner/climate/index.ts';

const HEADER = [
  'LOCATION,Tarn Hollow,-,ZZZ,Made up,000000,46.5,-90.2,-6.0,410.0',
  'DESIGN CONDITIONS,0',
  'TYPICAL/EXTREME PERIODS,0',
  'GROUND TEMPERATURES,0',
  'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
  'COMMENTS 1,',
  'COMMENTS 2,',
  'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
];

type Hour = { month: number; day: number; hour: number; t: number | string; dew: number | string; rh: number | string };

function hours(leap = false): Hour[] {
  return MONTH_DAYS.flatMap((days, m) =>
    Array.from({ length: days + (leap && m === 1 ? 1 : 0) }, (_, d) =>
      Array.from({ length: 24 }, (_, h) => ({ month: m + 1, day: d + 1, hour: h + 1, t: m - h / 10, dew: -5, rh: 70 })),
    ).flat(),
  );
}

const file = (rows: Hour[]) =>
  [...HEADER, ...rows.map((r) => `2001,${r.month},${r.day},${r.hour},60,flags,${r.t},${r.dew},${r.rh},97000,0`)].join(
    '\r\n',
  );

function problemsOf(text: string) {
  try {
    parseEpw(text);
  } catch (error) {
    if (error instanceof EpwError) return error.problems;
    throw error;
  }
  return [];
}

test('a whole year is read with its place', () => {
  const climate = parseEpw(file(hours()));
  expect(climate).toMatchObject({ kind: 'hourly', name: 'Tarn Hollow, ZZZ', latitudeDeg: 46.5, elevationM: 410 });
  expect(climate.temperatureC[0]).toBe(0);
  expect(climate.temperatureC[8759]).toBeCloseTo(11 - 2.3, 9);
  expect(climate.rhPct[1234]).toBe(70);
});

test('29 February is left out', () => {
  expect(parseEpw(file(hours(true))).temperatureC).toEqual(parseEpw(file(hours())).temperatureC);
});

test('missing humidity is found from the dew point', () => {
  const rows = hours();
  rows[0] = { ...rows[0]!, t: 10, dew: 10, rh: 999 };
  expect(parseEpw(file(rows)).rhPct[0]).toBeCloseTo(100, 9);
});

// Signs are counted by hand: "2001,1,1,3,60,flags," are 20, "-0.5,99.9," ten more.
test('every problem is told with its line and sign', () => {
  const rows = hours();
  rows[2] = { ...rows[2]!, t: 99.9 };
  rows[5] = { ...rows[5]!, rh: 999, dew: 99.9 };
  rows[7] = { ...rows[7]!, t: 'x' };
  expect(problemsOf(file(rows))).toEqual([
    { line: 11, column: 21, text: 'dry bulb [°C]: "99.9" found, -70 to 60 expected' },
    {
      line: 14,
      column: 31,
      text: 'relative humidity [%]: "999" found, 0 to 110 expected, and no dew point in its place (dew point [°C]: "99.9" found, -70 to 70 expected)',
    },
    { line: 16, column: 21, text: 'dry bulb [°C]: "x" found, -70 to 60 expected' },
  ]);
});

test('a missing hour, a short file, half-hours and another kind of file are told', () => {
  const rows = hours();
  expect(problemsOf(file(rows.toSpliced(30, 1)))[0]).toEqual({
    line: 39,
    column: 10,
    text: 'month 1, day 2, hour 8 found, month 1, day 2, hour 7 expected',
  });
  expect(problemsOf(file(rows.slice(0, 100)))[0]!.text).toContain('ends after 100 hours');
  expect(problemsOf(file(rows).replace('DATA PERIODS,1,1', 'DATA PERIODS,1,2'))[0]!.text).toContain(
    '2 records an hour',
  );
  expect(problemsOf('name: Juniper\nkind: motorcycle\n')[0]).toMatchObject({ line: 1 });
  expect(problemsOf('')[0]).toMatchObject({ line: 1 });
});

test('the header is held to its form, each fault told on its line', () => {
  const sound = file(hours());
  const first = (from: string | RegExp, to: string) => problemsOf(sound.replace(from, to))[0];
  expect(first('LOCATION', 'PLACE')).toEqual({
    line: 1,
    column: 1,
    text: expect.stringMatching(/^"PLACE,Tarn Hollow,.*" found, a line beginning with LOCATION expected$/),
  });
  expect(first(',46.5,', ',146.5,')).toEqual({
    line: 1,
    column: 43,
    text: 'latitude [°]: "146.5" found, -90 to 90 expected',
  });
  expect(first(',410.0', ',')).toEqual({ line: 1, column: 59, text: 'elevation [m]: "" found, -500 to 9000 expected' });
  expect(first('DATA PERIODS', 'PERIODS')).toEqual({
    line: 8,
    column: 1,
    text: 'a line beginning with DATA PERIODS expected',
  });
  expect(problemsOf(sound.replace('LOCATION', 'location'))).toEqual([]);
});

test('a file with a mark of its encoding, other line ends and blank lines at its end is the same file', () => {
  const sound = file(hours());
  const climate = parseEpw(sound);
  for (const other of [
    `\uFEFF${sound}`,
    sound.replaceAll('\r\n', '\n'),
    sound.replaceAll('\r\n', '\r'),
    `${sound}\n\n  \n`,
  ])
    expect(parseEpw(other)).toEqual(climate);
});

test('a year with an hour too many is told, and of another kind of file fifty problems at the most', () => {
  const rows = hours();
  expect(problemsOf(file([...rows, rows[0]!]))).toEqual([{ line: 8769, column: 1, text: 'more than 8760 hours' }]);
  expect(problemsOf(file(rows.map((row) => ({ ...row, t: 99.9 }))))).toHaveLength(50);
  expect(problemsOf(file(rows.slice(0, 8759)))).toEqual([
    { line: 8767, column: 1, text: 'the file ends after 8759 hours, 8760 expected' },
  ]);
});

test('a place is called as its file has it, or as it is told', () => {
  const sound = file(hours());
  expect(parseEpw(sound, { id: 'mine', attribution: 'Thanks.' })).toMatchObject({ id: 'mine', attribution: 'Thanks.' });
  expect(parseEpw(sound)).toMatchObject({
    id: '000000',
    source: 'hourly weather file (EPW), Made up',
    attribution: 'Hourly weather: Made up',
  });
  const bare = parseEpw(sound.replace('Tarn Hollow,-,ZZZ,Made up,000000', '-,,-,,'));
  expect(bare).toMatchObject({
    id: 'hourly-file',
    name: 'hourly-file',
    source: 'hourly weather file (EPW), source not named',
  });
});

test('humidity over the brim is full, and readings at their bounds are taken', () => {
  const rows = hours();
  rows[0] = { ...rows[0]!, rh: 110 };
  rows[1] = { ...rows[1]!, t: -70, rh: 0 };
  rows[2] = { ...rows[2]!, t: 60 };
  const { rhPct, temperatureC } = parseEpw(file(rows));
  expect([rhPct[0], rhPct[1], temperatureC[1], temperatureC[2]]).toEqual([100, 0, -70, 60]);
});
