/** Finds the next day that has so many minutes left, in time that grows with the logarithm of the number of days. */
export class FreeTree {
  private readonly size: number;
  private readonly most: Float64Array;

  /** @param free - minutes left on each day; −1 where the day is closed */
  constructor(free: ArrayLike<number>) {
    let size = 1;
    while (size < free.length) size *= 2;
    this.size = size;
    this.most = new Float64Array(2 * size).fill(-1);
    for (let i = 0; i < free.length; i++) this.most[size + i] = free[i]!;
    for (let i = size - 1; i > 0; i--) this.most[i] = Math.max(this.most[2 * i]!, this.most[2 * i + 1]!);
  }

  set(day: number, free: number): void {
    let i = this.size + day;
    this.most[i] = free;
    for (i >>= 1; i > 0; i >>= 1) this.most[i] = Math.max(this.most[2 * i]!, this.most[2 * i + 1]!);
  }

  /**
   * First day from `from` on with at least `minutes` left.
   * @returns its position, or −1
   */
  next(from: number, minutes: number): number {
    if (from >= this.size) return -1;
    let i = this.size + from;
    while (this.most[i]! < minutes) {
      while (i & 1) i >>= 1;
      if (i === 0) return -1;
      i += 1;
    }
    while (i < this.size) {
      i *= 2;
      if (this.most[i]! < minutes) i += 1;
    }
    return i - this.size;
  }
}
