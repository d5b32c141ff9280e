import { describe, expect, test } from 'vitest';
import {
  airPicture,
  airTable,
  batteryPicture,
  batteryTable,
  type FigureLanguage,
  RING_MOST,
  stripPicture,
  yearRing,
  yearRingTable,
} from '../../src/figures/index.ts';
import { addDays } from '../../src/planner/dates.ts';
import type { BatteryPlan, MachinePlan } from '../../src/planner/season-plan.ts';
import { WORDS } from '../../src/site/words.ts';
import { demoMachines, manyMachines, siteMachine, sitePlan } from '../fixtures/site-plan.ts';
import { wellFormed } from './xml.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const SAY: FigureLanguage = {
  monthShort: (month) => MONTHS[month - 1] ?? '?',
  monthName: (month) => MONTHS[month - 1] ?? '?',
  date: (iso) => iso,
  amount: (value, unit, digits = 0) => `${value.toFixed(digits)} ${unit}`.trim(),
  words: WORDS.figures,
};
const about = { id: 'f', title: 'Title & <more>', description: 'What it shows' };
const outdoorC = sitePlan().season.places[0]!.outdoorTenDayC;
const ring = (machines: MachinePlan[], asOf = '2026-10-20', temperatures = outdoorC) =>
  yearRing({ asOf, machines, outdoorC: temperatures }, about, SAY);
const juniper = () => demoMachines()[0]!;
const battery = (plan: BatteryPlan, asOf = '2026-11-20') =>
  batteryPicture({ name: 'Juniper', asOf, battery: plan }, about, SAY);
const air = (plan: MachinePlan['air']) => airPicture({ name: 'Juniper', air: plan }, about, SAY);

/** What every picture owes: well formed, named, no number that is not one, nothing that a strict policy would refuse. */
function sound(svg: string): string {
  expect(wellFormed(svg)).toBe('well formed');
  expect(svg).toContain('<title id="f-title">Title &amp; &lt;more&gt;</title>');
  expect(svg).toContain('<desc id="f-description">What it shows</desc>');
  expect(svg).toContain('role="img" aria-labelledby="f-title f-description"');
  expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
  expect(svg).not.toMatch(/\sstyle=|<style|<script|\son\w+=|fill="#|stroke="#/);
  return svg;
}

const count = (svg: string, piece: RegExp) => svg.match(new RegExp(piece, 'g'))?.length ?? 0;

describe('the year ring', () => {
  test.each([0, 1, 2, 5, 7, 12])('holds %i machines, a band for each', (n) => {
    const svg = sound(ring(manyMachines(n)));
    expect(count(svg, /class="f-use"/)).toBe(n);
    expect(count(svg, /class="f-rest"/)).toBe(n);
    expect(count(svg, /data-hand=""/)).toBe(1);
    for (const month of MONTHS) expect(svg).toContain(`>${month}</text>`);
  });

  test('becomes a list of bars from thirteen machines, and of three hundred too', () => {
    expect(sound(ring(manyMachines(RING_MOST + 1)))).toContain('figure-list');
    const svg = sound(ring(manyMachines(300)));
    expect(count(svg, /class="f-rest"/)).toBe(300);
    expect(count(svg, /data-now=""/)).toBe(1);
  });

  test('a rest of a week, of more than a year and of three years stays within one turn', () => {
    for (const days of [7, 365, 400, 1095]) {
      const svg = sound(ring([siteMachine('a', 'Amber', '2026-10-25', addDays('2026-10-25', days))]));
      expect(count(svg, /class="f-use"/)).toBe(1);
    }
  });

  test('today stands at its share of the year, January at the top', () => {
    const angle = (asOf: string) =>
      Number(/data-hand="" transform="rotate\(([\d.]+)\)"/.exec(ring([juniper()], asOf))?.[1]);
    expect(angle('2026-01-01')).toBe(0);
    expect(angle('2026-07-02')).toBeCloseTo(179.5, 1);
    // 2028 is a leap year: 366 days to the turn.
    expect(angle('2028-12-31')).toBeCloseTo((365 / 366) * 360, 1);
  });

  test('works without temperatures, and south of the equator', () => {
    expect(ring([juniper()], '2026-10-20', [])).not.toContain('f-temperature');
    sound(ring([siteMachine('s', 'Southern', '2026-05-20', '2026-10-10')]));
    sound(
      ring(
        [juniper()],
        '2026-10-20',
        outdoorC.map((c) => -c),
      ),
    );
  });

  test('a name that is markup is shown as letters', () => {
    const svg = sound(ring([siteMachine('x', '<script>"&', '2026-10-25', '2027-04-10')]));
    expect(svg).toContain('&lt;script&gt;&quot;&amp;');
  });

  test('its table has a row for each machine', () => {
    const table = yearRingTable({ asOf: '2026-10-20', machines: demoMachines(), outdoorC }, SAY);
    expect(table.rows.map((row) => row[0])).toEqual(demoMachines().map((m) => m.name));
    for (const row of table.rows) expect(row).toHaveLength(table.head.length);
  });
});

describe('the battery picture', () => {
  test('shows band, expected line, threshold, each charge, each reading and the margin of each month', () => {
    const plan = juniper().battery!;
    const svg = sound(battery(plan));
    for (const part of ['f-band', 'f-expected', 'f-threshold'])
      expect(count(svg, new RegExp(`class="${part}"`))).toBe(1);
    expect(count(svg, /class="f-charge"/)).toBe(plan.charges.length);
    expect(count(svg, /class="f-reading/)).toBe(plan.readings.length);
    expect(count(svg, /class="f-cold"/)).toBe(plan.freezingByMonth.length);
  });

  test('a margin under 10 K is drawn as tight', () => {
    const plan = juniper().battery!;
    expect(battery(plan)).not.toContain('f-tight');
    plan.freezingByMonth[2]!.marginK = 4;
    expect(battery(plan)).toContain('f-tight');
  });

  test('is left out where the plan has no daily path', () => {
    expect(battery({ ...juniper().battery!, paths: undefined })).toBe('');
    expect(battery({ ...juniper().battery!, paths: { low: [], expected: [], high: [] } })).toBe('');
  });

  test('bears a rest of one day, of a week and of three years', () => {
    for (const days of [1, 7, 1095]) {
      const plan = siteMachine('a', 'Amber', '2026-10-25', addDays('2026-10-25', days)).battery!;
      expect(sound(battery(plan)).length).toBeLessThan(60_000);
    }
  });

  test('refuses a number that is not one', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) {
      const plan = juniper().battery!;
      plan.paths!.expected[40]!.stateOfChargePct = bad;
      expect(() => battery(plan)).toThrow(/finite/);
      const other = juniper().battery!;
      other.readings[0]!.stateOfChargePct = bad;
      expect(() => battery(other)).toThrow(RangeError);
    }
  });

  test('its table says for each charge what the state is before it', () => {
    const plan = juniper().battery!;
    const table = batteryTable({ name: 'Juniper', asOf: '2026-11-20', battery: plan }, SAY);
    for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    for (const charge of plan.charges) {
      const row = table.rows.find((r) => r[0] === charge.date)!;
      const before = plan.paths!.high.find((d) => d.date === addDays(charge.date, -1))!;
      expect(row[1]).toBe(`${before.stateOfChargePct.toFixed(0)} %`);
      expect(row.at(-1)).toBe(WORDS.figures.battery.event.charge);
    }
    expect(table.rows.map((r) => r[0])).toEqual([...table.rows.map((r) => r[0])].sort());
  });

  // A battery's acid freezes by its own strength; of one that is full no freezing point is published (CRC Handbook, concentrative
  // properties, end at about a third of acid), and it is said to lie below.
  test('its table gives the freezing point of the charge in its own row, and a bound where none is published', () => {
    const plan = juniper().battery!;
    const point = (i: number, value: number) => Object.assign(plan.paths!.high[i]!, { freezingPointC: value });
    const first = plan.paths!.high.findIndex(({ date }) => date.endsWith('-01'));
    const iso = plan.paths!.high[first]!.date;
    const cold = plan.freezingByMonth.find(({ month }) => month === Number(iso.slice(5, 7)))!.designLowC;
    const row = () =>
      batteryTable({ name: 'Juniper', asOf: '2026-11-20', battery: plan }, SAY).rows.find((r) => r[0] === iso)!;
    point(first, -21);
    expect(row()[5]).toBe(SAY.amount(-21, '°C'));
    expect(row()[6]).toBe(SAY.amount(cold + 21, 'K'));
    point(first, -55);
    expect(row()[5]).toBe(`below ${SAY.amount(-50, '°C')}`);
    expect(row()[6]).toBe(`at least ${SAY.amount(cold + 50, 'K')}`);
  });
});

describe('the picture of the store air', () => {
  const sayable = () => demoMachines()[1]!.air;

  test('shows condensation where it can be said, and says in words where it cannot', () => {
    expect(sound(air(sayable()))).toContain('class="f-condensation"');
    const svg = sound(air(juniper().air));
    expect(svg).not.toContain('class="f-condensation"');
    expect(svg).toContain(WORDS.figures.air.unsayableShort);
    for (const row of airTable({ name: 'Juniper', air: juniper().air }, SAY).rows)
      expect(row.at(-1)).toBe(WORDS.figures.air.unsayable);
  });

  test('keeps the order of the rest over the new year', () => {
    const plan = sayable();
    plan.months = [10, 11, 12, 1, 2].map((month) => plan.months[month - 1]!);
    const names = [...sound(air(plan)).matchAll(/>(Oct|Nov|Dec|Jan|Feb)<\/text>/g)].map((m) => m[1]);
    expect(names.slice(0, 5)).toEqual(['Oct', 'Nov', 'Dec', 'Jan', 'Feb']);
    expect(airTable({ name: 'x', air: plan }, SAY).rows.map((r) => r[0])).toEqual(['Oct', 'Nov', 'Dec', 'Jan', 'Feb']);
  });

  test('bears one month, none, and three years', () => {
    const plan = sayable();
    expect(air({ ...plan, months: [] })).toBe('');
    sound(air({ ...plan, months: plan.months.slice(0, 1) }));
    sound(air({ ...plan, months: [...plan.months, ...plan.months, ...plan.months] }));
  });

  test('refuses hours that are not a number', () => {
    const plan = sayable();
    plan.months[3]!.wetHours = Number.NaN;
    expect(() => air(plan)).toThrow(RangeError);
  });
});

describe('the strip-down picture', () => {
  const strip = () => juniper().strip!;
  const draw = (plan = strip()) => stripPicture({ name: 'Juniper', strip: plan }, about, SAY);

  test('numbers what comes off from left to right, with a stop for each part a job needs', () => {
    const svg = sound(draw());
    expect(count(svg, /class="f-box/)).toBe(strip().off.length);
    expect(count(svg, /class="f-job"/)).toBe(strip().jobs.length);
    const stops = strip().off.reduce((sum, step) => sum + step.forJobs.length, 0);
    expect(count(svg, /r="6"/)).toBe(stops);
    for (const job of strip().jobs) expect(svg).toContain(`>${job.name}</text>`);
    expect(svg).toContain('class="f-box f-off"');
  });

  // A part may be off with no job left that it is off for.
  test('names the jobs in its words where there are some, and leaves no gap where there are none', () => {
    const said = (jobs: string) => SAY.words.strip.description('Seat and Tank', jobs);
    expect(said('Valves')).toContain('out of its way: Valves. It goes back');
    expect(said('')).toBe('Left to right what comes off: Seat and Tank. It goes back together from right to left.');
  });

  test('bears fifteen parts with long names, and none', () => {
    const part = strip().off[0]!;
    const off = Array.from({ length: 15 }, (_, i) => ({
      ...part,
      assembly: `a${i}`,
      name: `Left lower fairing bracket number ${i}`,
      behind: i > 0 ? [`a${i - 1}`, 'a0'] : [],
    }));
    expect(sound(draw({ ...strip(), off }))).toContain('figure-long');
    expect(draw({ ...strip(), off: [] })).toBe('');
  });
});
