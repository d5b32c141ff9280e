/** Ticks of the rounds of charging, each in the record of its machine: the same as on the machine's own page. */
import { isOfSeason, type RecordSeason } from '../../planner/rest-key.ts';
import { dayIn } from '../day-in.ts';
import { type Entry, newId } from './entries.ts';
import { BenchStore, type Trouble } from './store.ts';
import { BENCH } from './words.ts';

type Tick = Extract<Entry, { kind: 'done' }>;

export class Rounds {
  private readonly root: HTMLElement;
  private readonly store: BenchStore;
  private readonly seasons: Record<string, RecordSeason>;
  private writing: Promise<unknown> = Promise.resolve();

  private constructor(root: HTMLElement, store: BenchStore) {
    this.root = root;
    this.store = store;
    this.seasons = JSON.parse(root.dataset.seasons ?? '{}');
    store.onChange(() => void this.tick(new Map()));
  }

  static async open(root: HTMLElement): Promise<Rounds> {
    return new Rounds(root, await BenchStore.open());
  }

  /**
   * Writes down what was touched, and shows what is kept.
   * @param touched - boxes with what they now say; emptied
   */
  tick(touched: Map<HTMLInputElement, boolean>): Promise<unknown> {
    const what = async () => {
      for (const [box, done] of touched) {
        await this.write(box, done);
        touched.delete(box);
      }
      const ticks = await this.ticks();
      for (const box of document.querySelectorAll<HTMLInputElement>('input.box[data-machine]'))
        if (!touched.has(box)) box.checked = box.defaultChecked || ticks.some((tick) => isOf(tick, box));
      this.warn(this.store.hasLoose ? (this.store.trouble ?? 'full') : this.store.trouble);
    };
    this.writing = this.writing.then(what, what);
    return this.writing;
  }

  private async write(box: HTMLInputElement, done: boolean): Promise<void> {
    const { machine = '', step = '' } = box.dataset;
    const same = (await this.ticks()).filter((tick) => isOf(tick, box));
    if (!done) for (const tick of same) if (!(await this.store.remove(tick))) this.say(BENCH.removed);
    if (!done || same.length > 0) return;
    const date = dayIn(document.body.dataset.zone, Date.now());
    const season = this.seasons[machine]?.key;
    const tick: Tick = { format: 1, id: newId(), machine, kind: 'done', step, date, season };
    if (!(await this.store.add(tick))) this.say(BENCH.saved);
  }

  /** Those of the season that each machine is in. */
  private async ticks(): Promise<Tick[]> {
    const { entries } = await this.store.all();
    return entries.filter((e): e is Tick => {
      const season = this.seasons[e.machine];
      return e.kind === 'done' && season !== undefined && isOfSeason(e, season);
    });
  }

  private say(text: string): void {
    this.root.querySelector('[data-said]')!.textContent = text;
  }

  private warn(trouble: Trouble | undefined): void {
    this.root.querySelector('[data-trouble]')!.textContent = trouble ? BENCH.trouble[trouble] : '';
  }
}

const isOf = (tick: Tick, { dataset: { machine, step } }: HTMLInputElement) =>
  tick.machine === machine && tick.step === step;
