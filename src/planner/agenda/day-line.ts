/** Use of the renewable resources along one day's session, as steps: from `times[k]` on, `use[k]` units are taken. */
export class DayLine {
  private readonly times: number[] = [0];
  private readonly use: number[][];
  private readonly capacity: readonly number[];
  /** End of the last work [min]. */
  last = 0;

  constructor(capacity: readonly number[]) {
    this.capacity = capacity;
    this.use = [capacity.map(() => 0)];
  }

  /**
   * Earliest start at which the units asked for are free throughout.
   * @param ready - not before [min]
   * @param minutes - how long [min]
   * @param demand - units of each resource
   * @returns minutes from the start of the session; the end is not checked
   */
  earliest(ready: number, minutes: number, demand: readonly number[]): number {
    const { times, use } = this;
    let k = this.segmentAt(ready);
    let start = ready;
    for (let j = k; j < times.length; j++) {
      if (j > k && times[j]! >= start + minutes) break;
      if (this.fits(use[j]!, demand)) continue;
      k = j + 1;
      if (k >= times.length) return Number.POSITIVE_INFINITY;
      start = times[k]!;
    }
    return start;
  }

  /**
   * Length of the free stretch that begins at the earliest free minute from `ready` on.
   * @returns its start and its end [min]
   */
  firstGap(ready: number, demand: readonly number[], limit: number): { start: number; end: number } {
    const start = this.earliest(ready, 1, demand);
    let end = start;
    for (let j = this.segmentAt(start); j < this.times.length && this.fits(this.use[j]!, demand); j++) {
      end = this.times[j + 1] ?? limit;
    }
    return { start, end: Math.min(end, limit) };
  }

  /** Takes the units from `start` for `minutes`. */
  take(start: number, minutes: number, demand: readonly number[]): void {
    this.last = Math.max(this.last, start + minutes);
    const first = this.cut(start);
    const end = this.cut(start + minutes);
    for (let j = first; j < end; j++) {
      const use = this.use[j]!;
      for (let r = 0; r < demand.length; r++) use[r]! += demand[r]!;
    }
  }

  private fits(use: readonly number[], demand: readonly number[]): boolean {
    for (let r = 0; r < demand.length; r++) {
      if (demand[r]! > 0 && use[r]! + demand[r]! > this.capacity[r]!) return false;
    }
    return true;
  }

  private segmentAt(minute: number): number {
    let k = this.times.length - 1;
    while (this.times[k]! > minute) k--;
    return k;
  }

  private cut(minute: number): number {
    const k = this.segmentAt(minute);
    if (this.times[k] === minute) return k;
    this.times.splice(k + 1, 0, minute);
    this.use.splice(k + 1, 0, [...this.use[k]!]);
    return k + 1;
  }
}
