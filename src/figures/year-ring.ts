/**
 * The year ring: one band for each machine round the twelve months, January at the top, with the outdoor temperature
 * inside and today as a hand. More machines than a ring can hold become a list of bars instead.
 */
import { arc, curveCardinalClosed, lineRadial } from 'd3-shape';
import { daysBetween } from '../planner/dates.ts';
import type { IsoDate } from '../planner/household.ts';
import { linear } from './scale.ts';
import { type Alternative, el, escapeText, label, picture, type Table } from './svg.ts';
import type { FigureLanguage } from './words.ts';
import { type RingData, type RingMachine, shareOfYear } from './year.ts';
import { yearList } from './year-list.ts';

/** The most bands that can still be told apart on a phone. */
export const RING_MOST = 12;

const CENTRE = 180;
const OUTER = 156;
const TURN = 2 * Math.PI;
const YEAR_DAYS = 365;
/** Days from one outdoor temperature to the next. */
const STEP_DAYS = 10;

/** The picture of the year. */
export function yearRing(data: RingData, about: Alternative, say: FigureLanguage): string {
  if (data.machines.length > RING_MOST) return yearList(data, about, say);
  const { machines } = data;
  const inner = machines.length > 6 ? 62 : 84;
  const step = machines.length === 0 ? 0 : Math.min(22, (OUTER - inner) / machines.length);
  const bands = machines.map((machine, i) =>
    band(machine, i, OUTER - i * step, Math.max(3, step - 2.5), about.id, say),
  );
  const hole = OUTER - machines.length * step - 4;
  return picture(
    CENTRE * 2,
    CENTRE * 2,
    about,
    'ring',
    el(
      'g',
      { transform: `translate(${CENTRE} ${CENTRE})` },
      months(say),
      ...bands,
      climate(data.outdoorC, hole, say),
      hand(data.asOf, say),
    ),
  );
}

function months(say: FigureLanguage): string {
  return Array.from({ length: 12 }, (_, i) => {
    const start = point(i / 12, OUTER + 2);
    const end = point(i / 12, OUTER + 9);
    const middle = point((i + 0.5) / 12, OUTER + 14);
    return (
      el('line', { x1: start.x, y1: start.y, x2: end.x, y2: end.y, class: 'f-rule' }) +
      label(middle.x, middle.y, say.monthShort(i + 1), { class: 'f-text f-mid', 'dominant-baseline': 'central' })
    );
  }).join('');
}

function band(
  machine: RingMachine,
  index: number,
  outer: number,
  thick: number,
  id: string,
  say: FigureLanguage,
): string {
  const ring = arc().cornerRadius(1);
  const radius = outer - thick / 2;
  const sector = (from: IsoDate, to: IsoDate, kind: string) => {
    const share = Math.min(1, Math.max(0, daysBetween(from, to) / YEAR_DAYS));
    const start = shareOfYear(from) * TURN;
    const d = ring({
      innerRadius: outer - thick,
      outerRadius: outer,
      startAngle: start,
      endAngle: start + share * TURN,
    });
    return share === 0 || d === null ? '' : el('path', { d, class: kind });
  };
  const from = point(shareOfYear(machine.layUp.start), radius);
  const to = point(shareOfYear(machine.startUp.firstUse), radius);
  const mark = Math.min(5, thick / 2);
  return el(
    'g',
    {},
    el('title', {}, escapeText(say.words.ring.bandOf(machine.name))),
    el('circle', { r: radius, class: 'f-use' }),
    sector(machine.layUp.start, machine.layUp.done, 'f-work'),
    sector(machine.layUp.done, machine.startUp.start, 'f-rest'),
    sector(machine.startUp.start, machine.startUp.firstUse, 'f-work'),
    name(machine, index, radius, thick, id),
    el('rect', {
      x: -mark,
      y: -mark,
      width: mark * 2,
      height: mark * 2,
      class: 'f-mark',
      transform: `translate(${round(from.x)} ${round(from.y)}) rotate(${round(shareOfYear(machine.layUp.start) * 360)})`,
    }),
    el('circle', { cx: to.x, cy: to.y, r: mark, class: 'f-mark-open' }),
  );
}

/** The machine's name along the middle of its rest, or its number where the band is too thin for a name. */
function name(machine: RingMachine, index: number, radius: number, thick: number, id: string): string {
  const rest = Math.min(YEAR_DAYS, Math.max(0, daysBetween(machine.layUp.done, machine.startUp.start)));
  const middle = shareOfYear(machine.layUp.done) + rest / YEAR_DAYS / 2;
  const room = (rest / YEAR_DAYS) * TURN * radius - 16;
  const size = Math.min(12, thick - 1);
  const width = machine.name.length * size * 0.56;
  if (size < 10 || width > room) {
    const at = point(middle, radius);
    return label(at.x, at.y, String(index + 1), {
      class: 'f-on-rest f-mid',
      'dominant-baseline': 'central',
      'font-size': Math.max(8, size),
    });
  }
  // In the lower half of the ring the path runs backwards, so that the name stands upright.
  const turn = (((middle % 1) + 1) % 1) * 360;
  const upside = turn > 90 && turn < 270;
  const spread = room / radius / TURN / 2;
  const line = radius + (upside ? size * 0.36 : -size * 0.36);
  const a = point(middle + (upside ? spread : -spread), line);
  const b = point(middle + (upside ? -spread : spread), line);
  const large = spread * 2 > 0.5 ? 1 : 0;
  const d = `M${round(a.x)} ${round(a.y)}A${round(line)} ${round(line)} 0 ${large} ${upside ? 0 : 1} ${round(b.x)} ${round(b.y)}`;
  return (
    el('path', { id: `${id}-${index}`, d, fill: 'none' }) +
    el(
      'text',
      { class: 'f-on-rest f-mid', 'font-size': size },
      el('textPath', { href: `#${id}-${index}`, startOffset: '50%' }, escapeText(machine.name)),
    )
  );
}

/** Outdoor temperature as a closed line; the dashed ring is freezing. */
function climate(outdoorC: number[], hole: number, say: FigureLanguage): string {
  if (outdoorC.length < 3 || hole < 24) return '';
  const low = Math.min(...outdoorC, -1);
  const high = Math.max(...outdoorC, 1);
  const radius = linear([low, high], [Math.min(16, hole / 3), hole - 3]);
  const line = lineRadial<number>()
    .angle((_, i) => ((i * STEP_DAYS) / YEAR_DAYS) * TURN)
    .radius((c) => radius(c))
    .curve(curveCardinalClosed.tension(0.4));
  const zero = radius(0);
  return el(
    'g',
    {},
    el('circle', { r: zero, class: 'f-freezing' }),
    el('path', { d: line(outdoorC) ?? '', class: 'f-temperature', fill: 'none' }),
    label(0, zero + 4, say.amount(0, '°C'), { class: 'f-text f-small f-mid f-halo' }),
  );
}

/** Today; the page turns it to the day on which it is opened. */
function hand(asOf: IsoDate, say: FigureLanguage): string {
  return el(
    'g',
    { class: 'f-hand', 'data-hand': '', transform: `rotate(${round(shareOfYear(asOf) * 360)})` },
    el('title', {}, escapeText(say.words.ring.today)),
    el('line', { x1: 0, y1: 6, x2: 0, y2: -OUTER - 4 }),
    el('circle', { r: 4 }),
    el('path', { d: `M-4.5 ${-OUTER - 8}H4.5L0 ${-OUTER}Z` }),
  );
}

function point(share: number, radius: number): { x: number; y: number } {
  return { x: Math.sin(share * TURN) * radius, y: -Math.cos(share * TURN) * radius };
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

/** The dates of the ring. */
export function yearRingTable(data: RingData, say: FigureLanguage): Table {
  return {
    caption: say.words.ring.caption,
    head: say.words.ring.head,
    rows: data.machines.map((m) => [
      m.name,
      say.date(m.layUp.start),
      say.date(m.layUp.done),
      say.date(m.startUp.start),
      say.date(m.startUp.firstUse),
    ]),
  };
}
