/**
 * The battery over the rest: state of charge between its low and high loss, the threshold, charges and readings; below it,
 * how far the battery stays from freezing.
 */
import { area, line } from 'd3-shape';
import { addDays, dayNumber } from '../planner/dates.ts';
import type { IsoDate } from '../planner/household.ts';
import type { BatteryDay, BatteryPlan } from '../planner/season-plan.ts';
import { linear, type Scale } from './scale.ts';
import { type Alternative, el, escapeText, label, picture, type Table } from './svg.ts';
import type { FigureLanguage } from './words.ts';
import { monthStarts } from './year.ts';
import { nowLine } from './year-list.ts';

export interface BatteryData {
  name: string;
  asOf: IsoDate;
  battery: BatteryPlan;
}

/** No published freezing point of acid is used beyond this: it is said as a bound [°C]. */
const PUBLISHED_TO_C = -50;

const WIDTH = 400;
const LEFT = 34;
const RIGHT = WIDTH - 8;
const TOP = 26;
const FLOOR = 190;
const PANEL = 236;
const END = 322;

/** The picture; empty text where the plan holds no daily path. */
export function batteryPicture(data: BatteryData, about: Alternative, say: FigureLanguage): string {
  const paths = data.battery.paths;
  const from = paths?.expected[0]?.date;
  const to = paths?.expected.at(-1)?.date;
  if (!paths || !from || !to) return '';
  const x = linear([dayNumber(from), Math.max(dayNumber(to), dayNumber(from) + 1)], [LEFT, RIGHT]);
  const lowest = Math.min(...paths.high.map((d) => d.stateOfChargePct), data.battery.thresholdPct - 5);
  const y = linear([Math.max(0, Math.floor((lowest - 3) / 10) * 10), 100], [FLOOR, TOP]);
  const at = (iso: IsoDate) => x(dayNumber(iso));
  return picture(
    WIDTH,
    data.battery.freezingByMonth.length > 0 ? END + 8 : FLOOR + 24,
    about,
    'battery',
    label(0, 12, say.words.battery.stateOfCharge, { class: 'f-text f-strong' }),
    ...y
      .ticks(4)
      .map(
        (pct) =>
          el('line', { x1: LEFT, x2: RIGHT, y1: y(pct), y2: y(pct), class: 'f-rule' }) +
          label(LEFT - 5, y(pct) + 4, String(pct), { class: 'f-text f-end' }),
      ),
    monthTicks(from, to, at, say),
    el('path', { d: band(paths, at, y), class: 'f-band' }),
    el('path', { d: curve(paths.expected, at, y), class: 'f-expected', fill: 'none' }),
    threshold(data.battery.thresholdPct, y, say),
    ...data.battery.charges.filter((c) => c.date >= from && c.date <= to).map((c) => chargeMark(at(c.date), say)),
    ...data.battery.readings.filter((r) => r.date >= from && r.date <= to).map((r) => reading(r, at, y, say)),
    margins(data.battery, from, to, at, say),
    nowLine({ from, to, x0: LEFT, x1: RIGHT, y0: TOP - 4, y1: FLOOR }, data.asOf, say.words.battery.today),
  );
}

type At = (iso: IsoDate) => number;

function band(paths: NonNullable<BatteryPlan['paths']>, at: At, y: Scale): string {
  const rows = thin(paths.low.map((low, i) => ({ low, high: paths.high[i] ?? low })));
  return (
    area<(typeof rows)[number]>()
      .x((r) => at(r.low.date))
      .y0((r) => y(r.high.stateOfChargePct))
      .y1((r) => y(r.low.stateOfChargePct))
      .digits(1)(rows) ?? ''
  );
}

function curve(days: BatteryDay[], at: At, y: Scale): string {
  return (
    line<BatteryDay>()
      .x((d) => at(d.date))
      .y((d) => y(d.stateOfChargePct))
      .digits(1)(thin(days)) ?? ''
  );
}

/** At most some four hundred points: a rest of three years has more days than the picture has dots. */
function thin<T>(rows: T[]): T[] {
  const every = Math.ceil(rows.length / 400);
  return every <= 1 ? rows : rows.filter((_, i) => i % every === 0 || i === rows.length - 1);
}

function monthTicks(from: IsoDate, to: IsoDate, at: At, say: FigureLanguage): string {
  const starts = monthStarts(from, to).filter((day) => day >= from);
  const every = Math.ceil(starts.length / 9);
  return starts
    .filter((_, i) => i % every === 0)
    .map((day) => {
      const x = at(day);
      const text =
        x < RIGHT - 24
          ? label(x + 2, FLOOR + 15, say.monthShort(Number(day.slice(5, 7))), { class: 'f-text f-small' })
          : '';
      return el('line', { x1: x, x2: x, y1: FLOOR, y2: FLOOR + 5, class: 'f-rule' }) + text;
    })
    .join('');
}

function threshold(pct: number, y: Scale, say: FigureLanguage): string {
  return (
    el('line', { x1: LEFT, x2: RIGHT, y1: y(pct), y2: y(pct), class: 'f-threshold' }) +
    label(RIGHT, y(pct) + 13, say.words.battery.threshold(say.amount(pct, '%')), {
      class: 'f-text f-small f-end f-halo',
    })
  );
}

function chargeMark(x: number, say: FigureLanguage): string {
  return el(
    'g',
    { class: 'f-charge' },
    el('title', {}, escapeText(say.words.battery.charge)),
    el('line', { x1: x, x2: x, y1: TOP - 2, y2: FLOOR }),
    el('path', { d: `M${x.toFixed(1)} ${TOP - 14}l5 9h-10z` }),
  );
}

function reading(r: BatteryPlan['readings'][number], at: At, y: Scale, say: FigureLanguage): string {
  const x = at(r.date);
  const clamp = (pct: number) => {
    if (!Number.isFinite(pct)) throw new RangeError(`reading of ${r.date}: found ${pct} %, expected a finite number`);
    return y(Math.min(100, Math.max(0, pct)));
  };
  return el(
    'g',
    { class: r.usable ? 'f-reading' : 'f-reading f-doubt' },
    el('title', {}, escapeText(say.words.battery.reading)),
    el('line', {
      x1: x,
      x2: x,
      y1: clamp(r.stateOfChargePct - r.spreadPct),
      y2: clamp(r.stateOfChargePct + r.spreadPct),
    }),
    el('circle', { cx: x, cy: clamp(r.stateOfChargePct), r: 4 }),
  );
}

/** A lithium battery does not freeze: what it stands is its lowest storage temperature. */
const freezes = ({ chemistry }: BatteryPlan) => chemistry !== 'lifepo4';

/** The column of the table that says so. */
const FREEZES_AT = 5;

/** Coldest night against freezing point, month by month. */
function margins(battery: BatteryPlan, from: IsoDate, to: IsoDate, at: At, say: FigureLanguage): string {
  const months = battery.freezingByMonth;
  const { battery: words } = say.words;
  if (months.length === 0) return '';
  const starts = monthStarts(from, to);
  const lows = months.flatMap((m) => [m.designLowC, m.freezingPointC]);
  const y = linear([Math.min(...lows) - 2, Math.max(...lows, 0) + 2], [END, PANEL]);
  const bars = starts.flatMap((day, i) => {
    const m = months[i % months.length];
    if (!m) return [];
    const x0 = Math.max(LEFT, at(day)) + 1;
    const next = starts[i + 1];
    const x1 = next ? at(next) - 1 : RIGHT;
    if (x1 - x0 < 2) return [];
    const top = Math.min(y(m.designLowC), y(m.freezingPointC));
    const tall = Math.abs(y(m.designLowC) - y(m.freezingPointC));
    const text = say.amount(m.marginK, 'K');
    return [
      el('rect', {
        x: x0,
        y: top,
        width: x1 - x0,
        height: tall,
        class: m.marginK < 10 ? 'f-margin f-tight' : 'f-margin',
      }),
      el('line', { x1: x0, x2: x1, y1: y(m.designLowC), y2: y(m.designLowC), class: 'f-cold' }),
      el('line', { x1: x0, x2: x1, y1: y(m.freezingPointC), y2: y(m.freezingPointC), class: 'f-freezes' }),
      x1 - x0 > 20 ? label((x0 + x1) / 2, top + tall / 2 + 4, text.replace(/ .*/, ''), { class: 'f-text f-mid' }) : '',
    ];
  });
  return el(
    'g',
    {},
    label(0, PANEL - 10, freezes(battery) ? words.margin : words.storage.margin, { class: 'f-text f-strong' }),
    ...y
      .ticks(3)
      .map(
        (c) =>
          el('line', { x1: LEFT, x2: RIGHT, y1: y(c), y2: y(c), class: 'f-rule' }) +
          label(LEFT - 5, y(c) + 4, say.amount(c, '°C').replace(/ .*/, ''), { class: 'f-text f-end' }),
      ),
    ...bars,
  );
}

/** The picture's numbers: the middle and the end of each month, each charge, each reading. */
export function batteryTable(data: BatteryData, say: FigureLanguage): Table {
  const { battery } = data;
  const { event, head, storage } = say.words.battery;
  const rows = new Map<IsoDate, string>();
  for (const day of battery.paths?.expected ?? [])
    if (day.date.endsWith('-01') || day.date === battery.paths?.expected.at(-1)?.date) rows.set(day.date, '');
  for (const charge of battery.charges) rows.set(charge.date, event.charge);
  for (const r of battery.readings)
    rows.set(r.date, `${event.reading}: ${say.amount(r.volts, 'V', 2)}${r.usable ? '' : ` (${event.unusable})`}`);
  const dayOf = (path: 'low' | 'expected' | 'high', iso: IsoDate) => {
    const days = battery.paths?.[path] ?? [];
    const first = days[0]?.date;
    return first === undefined ? undefined : days[dayNumber(iso) - dayNumber(first)];
  };
  const on = (path: 'low' | 'expected' | 'high', iso: IsoDate) => {
    const day = dayOf(path, iso);
    return day ? say.amount(day.stateOfChargePct, '%', 0) : '';
  };
  // Of the day's own charge at the fast loss, which stands in the same row; the cold is the month's.
  const freezing = (iso: IsoDate) => {
    const m = battery.freezingByMonth.find(({ month }) => month === Number(iso.slice(5, 7)));
    if (!m) return ['', '', ''];
    const point = dayOf('high', iso)?.freezingPointC ?? m.freezingPointC;
    const { below, atLeast } = say.words.battery;
    const isBound = point < PUBLISHED_TO_C;
    return [
      say.amount(m.designLowC, '°C'),
      isBound ? below(say.amount(PUBLISHED_TO_C, '°C')) : say.amount(point, '°C'),
      isBound ? atLeast(say.amount(m.designLowC - PUBLISHED_TO_C, 'K')) : say.amount(m.designLowC - point, 'K'),
    ];
  };
  return {
    caption: say.words.battery.caption(data.name),
    head: freezes(battery) ? head : head.map((title, i) => (i === FREEZES_AT ? storage.head : title)),
    rows: [...rows]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([iso, what]) => {
        // A charge is on the morning of its day: the numbers before it are those of the day before.
        const day = what === event.charge ? addDays(iso, -1) : iso;
        return [say.date(iso), on('high', day), on('expected', day), on('low', day), ...freezing(day), what];
      }),
  };
}
