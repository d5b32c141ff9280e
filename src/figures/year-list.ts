/**
 * The year ring unrolled: one bar for each machine, for households with more machines than a ring can hold.
 */
import { dayNumber } from '../planner/dates.ts';
import { linear } from './scale.ts';
import { type Alternative, el, escapeText, label, lines, picture } from './svg.ts';
import type { FigureLanguage } from './words.ts';
import { monthStarts, type RingData } from './year.ts';

const WIDTH = 400;
const LEFT = 110;
const ROW = 20;
const TOP = 24;

/** Bars from the first lay-up to the last first use. */
export function yearList(data: RingData, about: Alternative, say: FigureLanguage): string {
  // ISO dates in order of text are in order of time.
  const days = [data.asOf, ...data.machines.flatMap((m) => [m.layUp.start, m.startUp.firstUse])].sort();
  const from = days[0] ?? data.asOf;
  const to = days.at(-1) ?? data.asOf;
  const x = linear([dayNumber(from), Math.max(dayNumber(to), dayNumber(from) + 1)], [LEFT, WIDTH - 4]);
  const height = TOP + data.machines.length * ROW + 6;
  const starts = monthStarts(from, to).filter((day) => day >= from);
  const every = Math.ceil(starts.length / 10);
  const rows = data.machines.map((m, i) => {
    const y = TOP + i * ROW;
    const [a, b, c, d] = [m.layUp.start, m.layUp.done, m.startUp.start, m.startUp.firstUse].map((day) =>
      x(dayNumber(day)),
    );
    return el(
      'g',
      {},
      label(0, y + 14, lines(m.name, 16, 1)[0] ?? '', { class: 'f-text' }),
      el('line', { x1: LEFT, x2: WIDTH - 4, y1: y + 10, y2: y + 10, class: 'f-use' }),
      el('rect', { x: a, y: y + 4, width: Math.max(1, d! - a!), height: 12, class: 'f-work' }),
      el('rect', { x: b, y: y + 4, width: Math.max(1, c! - b!), height: 12, class: 'f-rest' }),
    );
  });
  return picture(
    WIDTH,
    height,
    about,
    'list',
    ...starts
      .filter((_, i) => i % every === 0)
      .map(
        (day) =>
          el('line', { x1: x(dayNumber(day)), x2: x(dayNumber(day)), y1: 16, y2: height, class: 'f-rule' }) +
          label(x(dayNumber(day)) + 2, 12, say.monthShort(Number(day.slice(5, 7))), { class: 'f-text f-small' }),
      ),
    ...rows,
    nowLine({ from, to, x0: LEFT, x1: WIDTH - 4, y0: 16, y1: height }, data.asOf, say.words.ring.today),
  );
}

/** A line at today, moved by the page to the day on which it is opened, and hidden outside the picture's days. */
export function nowLine(
  span: { from: string; to: string; x0: number; x1: number; y0: number; y1: number },
  asOf: string,
  title: string,
): string {
  const share = (dayNumber(asOf) - dayNumber(span.from)) / Math.max(1, dayNumber(span.to) - dayNumber(span.from));
  const inside = share >= 0 && share <= 1;
  return el(
    'g',
    {
      class: inside ? 'f-hand' : 'f-hand f-away',
      'data-now': '',
      'data-from': span.from,
      'data-to': span.to,
      'data-x0': span.x0,
      'data-x1': span.x1,
      transform: `translate(${Math.round((span.x0 + (span.x1 - span.x0) * Math.min(1, Math.max(0, share))) * 10) / 10} 0)`,
    },
    el('title', {}, escapeText(title)),
    el('line', { x1: 0, x2: 0, y1: span.y0, y2: span.y1 }),
    el('path', { d: `M-4 ${span.y0 - 6}H4L0 ${span.y0}Z` }),
  );
}
