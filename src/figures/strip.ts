/**
 * The strip-down as a line of stations: what comes off, left to right, and a line for each job through the parts it needs
 * out of the way. Refitting reads the same picture from right to left.
 */
import type { StripPlan } from '../planner/season-plan.ts';
import { type Alternative, el, escapeText, label, lines, picture, SCALE } from './svg.ts';
import type { FigureLanguage } from './words.ts';

export interface StripData {
  name: string;
  strip: StripPlan;
}

const COLUMN = 112;
const BOX = 100;
const TALL = 58;
const LEFT = 10;
const ARCS = 44;
const ROW = 34;
/** Pixels up to which the picture stands at its own size, and from which it scrolls rather than shrinks. */
const WIDE = 820;
const LONG = 1150;
/** The most letters of a job's name. */
const NAME = 32;

/** Width of the picture: the columns, and what the names of the jobs need beyond them. */
function widthOf({ off, jobs }: StripPlan): number {
  const columns = LEFT * 2 + off.length * COLUMN;
  return jobs.reduce((width, job) => {
    const last = off.findLastIndex((step) => step.forJobs.includes(job.id));
    return Math.max(width, LEFT + (last + 0.5) * COLUMN + 20 + Math.min(NAME, job.name.length) * 7.6);
  }, columns);
}

/** The picture; empty text when nothing comes off. */
export function stripPicture(data: StripData, about: Alternative, say: FigureLanguage): string {
  const { off, jobs } = data.strip;
  if (off.length === 0) return '';
  const width = widthOf(data.strip);
  const top = ARCS + 14;
  const height = top + TALL + 22 + jobs.length * ROW + 24;
  const centre = (i: number) => LEFT + i * COLUMN + COLUMN / 2;
  const index = new Map(off.map((step, i) => [step.assembly, i]));
  const offAlready = new Set(data.strip.nowOff.map((n) => n.assembly));

  const arcs = off.flatMap((step, i) =>
    step.behind.flatMap((id) => {
      const from = index.get(id);
      if (from === undefined || from >= i) return [];
      const rise = Math.min(ARCS - 8, 10 + (i - from) * 8);
      const d = `M${centre(from) + 8} ${top}C${centre(from) + 12} ${top - rise} ${centre(i) - 12} ${top - rise} ${centre(i) - 8} ${top - 2}`;
      return [el('path', { d, class: 'f-behind', fill: 'none' })];
    }),
  );
  const boxes = off.map((step, i) => {
    const name = lines(step.name, 13, 2);
    return el(
      'g',
      { class: offAlready.has(step.assembly) ? 'f-box f-off' : 'f-box' },
      el('title', {}, escapeText(step.name)),
      el('rect', { x: centre(i) - BOX / 2, y: top, width: BOX, height: TALL, rx: 5 }),
      label(centre(i) - BOX / 2 + 6, top + 14, String(i + 1), { class: 'f-text f-small' }),
      label(centre(i) + BOX / 2 - 6, top + 14, say.words.strip.minutes(step.minutes), {
        class: 'f-text f-small f-end',
      }),
      ...name.map((line, k) =>
        label(centre(i), top + (name.length === 1 ? 38 : 32) + k * 15, line, { class: 'f-text f-mid f-strong' }),
      ),
    );
  });
  const rowY = (k: number) => top + TALL + 28 + k * ROW;
  const rows = jobs.map((job, k) => jobLine(job, rowY(k), off, centre));
  const drops = off.map((step, i) => {
    const last = jobs.findLastIndex((job) => step.forJobs.includes(job.id));
    return last < 0
      ? ''
      : el('line', { x1: centre(i), x2: centre(i), y1: top + TALL, y2: rowY(last), class: 'f-drop' });
  });
  const foot = height - 12;
  return picture(
    width,
    height,
    about,
    width * SCALE > LONG ? 'strip figure-long' : width * SCALE > WIDE ? 'strip figure-wide' : 'strip',
    label(LEFT, 12, `${say.words.strip.off} →`, { class: 'f-text' }),
    ...arcs,
    ...drops,
    ...rows,
    ...boxes,
    label(LEFT + off.length * COLUMN, foot, `← ${say.words.strip.on}`, { class: 'f-text f-end' }),
  );
}

function jobLine(
  job: StripPlan['jobs'][number],
  y: number,
  off: StripPlan['off'],
  centre: (i: number) => number,
): string {
  const stops = off.flatMap((step, i) => (step.forJobs.includes(job.id) ? [i] : []));
  const first = stops[0];
  const last = stops.at(-1);
  if (first === undefined || last === undefined) return '';
  return el(
    'g',
    { class: 'f-job' },
    el('line', { x1: centre(first), x2: centre(last), y1: y, y2: y }),
    ...stops.map((i) => el('circle', { cx: centre(i), cy: y, r: 6 })),
    label(centre(last) + 13, y + 4, lines(job.name, NAME, 1)[0] ?? '', { class: 'f-text f-strong' }),
  );
}
