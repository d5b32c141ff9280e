import type { Charger } from '../household.ts';
import type { OpenDays } from './open-days.ts';
import type { RotaBattery } from './rota-battery.ts';

/** A charger that keeps a full battery safely may go on by itself this long; another one is taken off the next day [h]. */
const UNATTENDED_MAINTAINER_H = 72;
const UNATTENDED_H = 24;
/** A battery that was fetched waits at the bench for its turn no longer than this, and never past its due day [d]. */
export const WAIT_DAYS = 3;

/** Clock hour at which the day's charging starts: ten at weekends, five in the afternoon else. */
const START_HOUR = { weekend: 10, weekday: 17 };

/** A battery while its rota is made. */
export interface State {
  battery: RotaBattery;
  last: number | undefined;
  due: number;
}

/** A charger's time given to a battery. */
export interface Slot {
  charger: Charger;
  startHour?: number | undefined;
  turnDay?: number | undefined;
}

/** A charger's time taken, in hours since day 0. */
interface Span {
  from: number;
  to: number;
}

/** What each charger is doing: spans in the order of time, none of which overlaps another. */
export class Bench {
  private readonly days: OpenDays;
  private readonly busy: Map<string, readonly Span[]>;

  constructor(days: OpenDays, busy = new Map<string, readonly Span[]>()) {
    this.days = days;
    this.busy = busy;
  }

  copy(): Bench {
    return new Bench(this.days, new Map(this.busy));
  }

  /**
   * Takes the charger that is done first on the day of the trip; else, for a battery that may wait, on the next day that
   * somebody is there, up to its due day.
   */
  place(state: State, day: number): Slot | undefined {
    const last = state.battery.waits ? Math.min(day + WAIT_DAYS, Math.max(day, state.due)) : day;
    for (let turn = day; turn <= last; turn++) {
      if (this.days.isAway(turn)) continue;
      const best = this.chargerOn(turn, state, day);
      if (!best) continue;
      const { charger, from, to } = best;
      const spans = this.busy.get(charger.id) ?? [];
      this.busy.set(charger.id, spans.toSpliced(begunBy(spans, from), 0, { from, to }));
      return turn === day ? { charger, startHour: from - day * 24 } : { charger, turnDay: turn };
    }
    return undefined;
  }

  /** A charge starts within the day's hours, and the last one may run on. */
  private chargerOn(turn: number, { battery, last }: State, day: number) {
    const opens = turn * 24 + this.startHour(turn);
    const closes = opens + this.days.hours(turn);
    let best: { charger: Charger; from: number; to: number } | undefined;
    for (const charger of battery.chargers) {
      const spans = this.busy.get(charger.id) ?? [];
      // A club's charger has thousands of spans: the last that begins by the day's end is the only one that can hold up this turn.
      const next = begunBy(spans, closes);
      const from = Math.max(opens, spans[next - 1]?.to ?? opens);
      const to = from + battery.hoursOn(charger, day, last);
      const runsOn = charger.maintainer ? UNATTENDED_MAINTAINER_H : this.days.isAway(turn + 1) ? 0 : UNATTENDED_H;
      const inHours = to <= closes || (from <= closes && to - from <= runsOn);
      const free = next === spans.length || spans[next]!.from >= to;
      if (inHours && free && (!best || to < best.to)) best = { charger, from, to };
    }
    return best;
  }

  fullText(state: State, day: number): string {
    const { battery, last } = state;
    const needs = battery.chargers
      .map((c) => `${Math.ceil(battery.hoursOn(c, day, last))} h on "${c.name}"`)
      .join(' or ');
    return `${battery.name} needs ${needs} by ${this.days.written(state.due)}, and no day up to then on which a charge is worth it has room for it: another charger that suits it, more hours on a day before, or a maintainer left on would do.`;
  }

  private startHour(day: number): number {
    return this.days.weekend(day) ? START_HOUR.weekend : START_HOUR.weekday;
  }
}

/** How many of the spans have begun by an hour. */
function begunBy(spans: readonly Span[], hour: number): number {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (spans[middle]!.from <= hour) low = middle + 1;
    else high = middle;
  }
  return low;
}
