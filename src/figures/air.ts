/**
 * The store's air month by month: temperature and dew point above, hours of wet and frosted metal below.
 */
import { nice } from 'd3-array';
import { curveMonotoneX, line } from 'd3-shape';
import type { AirMonth, AirPlan } from '../planner/season-plan.ts';
import { linear } from './scale.ts';
import { type Alternative, el, label, picture, type Table } from './svg.ts';
import type { FigureLanguage } from './words.ts';

export interface AirData {
  name: string;
  air: AirPlan;
}

const WIDTH = 400;
const LEFT = 34;
const TOP = 26;
const FLOOR = 150;
const PANEL = 206;
const END = 290;

/** The picture; empty text without months. */
export function airPicture(data: AirData, about: Alternative, say: FigureLanguage): string {
  const { months } = data.air;
  if (months.length === 0) return '';
  // The months stand in the order of the plan: those of the rest, which may run over the new year.
  const step = (WIDTH - LEFT - 4) / Math.max(months.length, 6);
  const left = (i: number) => LEFT + i * step;
  const middle = (i: number) => left(i) + step / 2;
  const all = months.flatMap((m) => [m.meanC, m.dewPointC]);
  const y = linear([Math.min(...all, 0) - 1, Math.max(...all, 0) + 1], [FLOOR, TOP]);
  const most = Math.max(10, ...months.flatMap((m) => [m.wetHours, m.frostHours ?? 0, m.condensationHours ?? 0]));
  const hour = linear(nice(0, most, 3), [END, PANEL]);
  const curve = (value: (m: AirMonth) => number) =>
    line<AirMonth>()
      .x((_, i) => middle(i))
      .y((m) => y(value(m)))
      .curve(curveMonotoneX)
      .digits(1)(months) ?? '';
  const { words } = say;
  const allSayable = data.air.condensationSayable && data.air.frostSayable;
  return picture(
    WIDTH,
    END + (allSayable ? 22 : 40),
    about,
    'air',
    label(0, 12, `${words.air.temperature}, ${words.air.dewPoint}`, { class: 'f-text f-strong' }),
    ...y
      .ticks(4)
      .map(
        (c) =>
          el('line', { x1: LEFT, x2: WIDTH - 4, y1: y(c), y2: y(c), class: c === 0 ? 'f-freezing' : 'f-rule' }) +
          label(LEFT - 5, y(c) + 4, say.amount(c, '°C').replace(/ .*/, ''), { class: 'f-text f-end' }),
      ),
    el('path', { d: curve((m) => m.meanC), class: 'f-temperature', fill: 'none' }),
    el('path', { d: curve((m) => m.dewPointC), class: 'f-dew', fill: 'none' }),
    monthNames(months, FLOOR + 15, middle, say),
    label(0, PANEL - 16, words.air.hours, { class: 'f-text f-strong' }),
    ...hour
      .ticks(3)
      .map(
        (h) =>
          el('line', { x1: LEFT, x2: WIDTH - 4, y1: hour(h), y2: hour(h), class: 'f-rule' }) +
          label(LEFT - 5, hour(h) + 4, String(h), { class: 'f-text f-end' }),
      ),
    ...months.map((m, i) => bars(m, left(i), step, hour)),
    monthNames(months, END + 15, middle, say),
    allSayable ? '' : label(LEFT, END + 34, words.air.unsayableShort, { class: 'f-text f-small' }),
  );
}

function monthNames(months: AirMonth[], y: number, middle: (i: number) => number, say: FigureLanguage): string {
  const every = Math.ceil(months.length / 12);
  return months
    .map((m, i) => (i % every ? '' : label(middle(i), y, say.monthShort(m.month), { class: 'f-text f-small f-mid' })))
    .join('');
}

function bars(m: AirMonth, x: number, step: number, hour: (h: number) => number): string {
  const shown: [number, string][] = [[m.wetHours, 'f-wet']];
  if (m.frostHours !== null) shown.push([m.frostHours, 'f-frost']);
  if (m.condensationHours !== null) shown.push([m.condensationHours, 'f-condensation']);
  const width = (step - 6) / shown.length;
  return shown
    .map(([h, kind], i) => {
      const tall = hour(0) - hour(h);
      return tall < 0.3 ? '' : el('rect', { x: x + 3 + i * width, y: hour(h), width, height: tall, class: kind });
    })
    .join('');
}

/** The picture's numbers, by month; what cannot be said stands in words. */
export function airTable(data: AirData, say: FigureLanguage): Table {
  const range = (mean: number | null, p90: number | null) =>
    mean === null || p90 === null ? say.words.air.unsayable : `${say.amount(mean, '', 0)} (${say.amount(p90, '', 0)})`;
  return {
    caption: say.words.air.caption(data.name),
    head: say.words.air.head,
    rows: data.air.months.map((m) => [
      say.monthName(m.month),
      say.amount(m.meanC, '°C'),
      say.amount(m.dewPointC, '°C'),
      say.amount(m.meanRhPct, '%', 0),
      range(m.wetHours, m.wetHoursP90),
      range(m.frostHours, m.frostHoursP90),
      range(m.condensationHours, m.condensationHoursP90),
    ]),
  };
}
