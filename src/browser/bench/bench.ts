/** The bench record at work: forms into entries, entries into a list, boxes on the sheets. Loaded when it is used. */
import { isOfSeason } from '../../planner/rest-key.ts';
import { dayIn } from '../day-in.ts';
import { PlannerClient } from '../planner/client.ts';
import { saveFile } from '../save-file.ts';
import { Anew } from './anew.ts';
import { type Entry, newId, recordOf, type Said } from './entries.ts';
import { recordFile } from './export.ts';
import { saidOf } from './form.ts';
import { entryList, listHtml, unreadHtml } from './list.ts';
import { type PageStep, showTicks, stepOnPage } from './page-steps.ts';
import { readRecords } from './record-files.ts';
import { BenchStore, type Kept, type Trouble } from './store.ts';
import { BENCH } from './words.ts';

export class Bench {
  private readonly root: HTMLElement;
  private readonly machine: string;
  private readonly zone: string | undefined;
  private readonly season: { key: string; from: string };
  private readonly steps: readonly PageStep[];
  private readonly early: Map<string, boolean>;
  private readonly client: PlannerClient;
  private readonly anew: Anew;
  private readonly store: BenchStore;
  /** The step on the page from which the form to leave it out was come to. */
  private cameFrom: string | undefined;
  private kept: Kept = { entries: [], unread: [] };
  /** What is written, one thing after the other: a box that is ticked and unticked at once ends unticked. */
  private writing: Promise<unknown> = Promise.resolve();
  private planning: Promise<unknown> = Promise.resolve();

  private constructor(root: HTMLElement, store: BenchStore, early: Map<string, boolean>) {
    const { machine = '', season = '', from = '', steps = '[]', base = '/', methods = '{}' } = root.dataset;
    this.root = root;
    this.store = store;
    this.early = early;
    this.machine = machine;
    this.zone = document.body.dataset.zone;
    this.season = { key: season, from };
    this.steps = (JSON.parse(steps) as [string, string, PageStep['phase']][]).map(([id, title, phase]) => ({
      id,
      title,
      phase,
    }));
    this.client = new PlannerClient({ base: new URL(base, location.href).href, methods: JSON.parse(methods) });
    const lookIns = this.steps.filter(({ phase }) => phase === 'look-in');
    this.anew = new Anew(root, this.client, new Set(lookIns.map(({ id }) => id)));
    store.onChange(() => void this.refresh());
    for (const field of root.querySelectorAll<HTMLInputElement>('input[type=date]')) {
      field.max = this.today();
      field.value ||= this.today();
    }
  }

  /**
   * Opens the record of a page.
   * @param early - boxes touched before it was there; written before anything is shown, so that their marks stay
   */
  static async open(root: HTMLElement, early: Map<string, boolean>): Promise<Bench> {
    const bench = new Bench(root, await BenchStore.open(), early);
    await bench.tick(early);
    return bench;
  }

  /**
   * Steps were ticked, or ticks were taken back.
   * @param touched - by step; emptied
   */
  tick(touched: Map<string, boolean>): Promise<unknown> {
    return this.inTurn(async () => {
      for (const [step, done] of touched) {
        const same = this.kept.entries.filter((e) => e.kind === 'done' && e.step === step && this.isNow(e));
        if (done && same.length === 0)
          await this.add([{ kind: 'done', step, date: this.today(), season: this.season.key }]);
        if (!done && same.length === 0) this.say(BENCH.doneInContent);
        if (!done) await this.take(same);
        touched.delete(step);
      }
      await this.refresh();
    });
  }

  submit(form: HTMLFormElement): Promise<unknown> {
    return this.inTurn(async () => {
      const said = saidOf(form, this.season.key);
      if (!said) return;
      if (said.kind === 'skipped')
        await this.take(this.kept.entries.filter((e) => e.kind === 'done' && e.step === said.step && this.isNow(e)));
      const trouble = await this.add([said]);
      // What could not be kept stays in the fields as well.
      if (!trouble) for (const field of form.querySelectorAll<HTMLInputElement>('[data-once]')) field.value = '';
      if (said.kind === 'skipped' && said.step === this.cameFrom)
        stepOnPage(said.step)?.scrollIntoView({ block: 'center' });
      this.cameFrom = undefined;
      await this.refresh();
    });
  }

  /** A step that is left out leads to the form that says so. */
  async leaveOut(step: string): Promise<void> {
    const form = this.root.querySelector<HTMLFormElement>('form[data-kind=skipped]')!;
    for (const box of [this.root.querySelector('details'), form.closest('details')]) box!.open = true;
    form.querySelector<HTMLSelectElement>('[name=step]')!.value = step;
    form.querySelector<HTMLInputElement>('[name=why]')!.focus({ preventScroll: true });
    this.cameFrom = step;
    const show = () => form.contains(document.activeElement) && form.closest('details')!.scrollIntoView();
    requestAnimationFrame(show);
    // What the plan puts in above moves the form out of sight.
    await this.planning;
    show();
  }

  async act(act: string, id: string | undefined): Promise<void> {
    if (act === 'remove')
      await this.inTurn(async () => {
        await this.take(this.kept.entries.filter((e) => e.id === id));
        await this.refresh();
      });
    if (act === 'unread')
      saveFile(`${this.machine}-unread.json`, 'application/json', JSON.stringify(this.unread(), null, 2));
    if (act === 'export') {
      const exported = `${new Date().toISOString().slice(0, 19)}Z`;
      const file = recordFile(this.machine, recordOf(this.own()), exported);
      saveFile(`${this.machine}-${exported.slice(0, 10)}.yaml`, 'text/yaml', file);
    }
    if (act === 'calendar') await this.anew.saveCalendar(id);
  }

  import(input: HTMLInputElement): Promise<unknown> {
    return this.inTurn(async () => {
      const own = { machine: this.machine, known: this.own(), asOf: this.today() };
      const { fresh, wrong } = await readRecords(this.client, input.files ?? [], own);
      input.value = '';
      const trouble = await this.add(fresh);
      await this.refresh();
      if (!trouble) this.say(BENCH.imported(fresh.length));
      const list = this.piece('problems');
      list.replaceChildren(...wrong.map((text) => Object.assign(document.createElement('li'), { textContent: text })));
    });
  }

  private inTurn(what: () => Promise<void>): Promise<unknown> {
    this.writing = this.writing.then(what, what);
    return this.writing;
  }

  private async add(all: readonly Said[]): Promise<Trouble | undefined> {
    let trouble: Trouble | undefined;
    for (const said of all) {
      const entry = { ...said, format: 1, id: newId(), machine: this.machine } as Entry;
      trouble = (await this.store.add(entry)) ?? trouble;
      this.kept.entries.push(entry);
    }
    if (all.length === 0) return undefined;
    this.warn(trouble);
    if (!trouble) {
      this.say(BENCH.saved);
      void navigator.storage?.persist?.();
    }
    return trouble;
  }

  private async take(entries: readonly Entry[]): Promise<void> {
    for (const entry of entries) {
      const trouble = await this.store.remove(entry);
      if (trouble) this.warn(trouble);
      else this.say(BENCH.removed);
    }
    this.kept.entries = this.kept.entries.filter((e) => !entries.includes(e));
  }

  /** Shows what is kept now, from this tab or another. */
  private async refresh(): Promise<void> {
    this.kept = await this.store.all();
    this.warn(this.store.trouble);
    const own = this.own();
    const now = own.filter((e) => this.isNow(e));
    this.piece('entries').innerHTML = listHtml(entryList(own, now, this.steps, this.root.dataset.units === 'us'));
    this.piece('unread').innerHTML = unreadHtml(this.unread().length);
    showTicks(now, this.steps, this.early);
    this.offerToLeaveOut(now);
    // What is written next does not wait for the plan.
    this.planning = this.anew.show(this.kept.entries, this.today());
  }

  private own(): Entry[] {
    return this.kept.entries.filter((e) => e.machine === this.machine);
  }

  private unread(): unknown[] {
    return this.kept.unread.filter((row) => {
      const owner = (row as { machine?: unknown } | null)?.machine;
      return owner === this.machine || typeof owner !== 'string';
    });
  }

  private isNow(entry: Entry): boolean {
    if (entry.machine !== this.machine) return false;
    return !('date' in entry) || isOfSeason(entry, this.season);
  }

  /** The steps that can still be left out. */
  private offerToLeaveOut(now: readonly Entry[]): void {
    const select = this.root.querySelector<HTMLSelectElement>('form[data-kind=skipped] [name=step]');
    if (!select) return;
    const met = new Set(now.flatMap((e) => (e.kind === 'done' || e.kind === 'skipped' ? [e.step] : [])));
    const chosen = select.value;
    select.replaceChildren(
      ...this.steps
        .filter(({ id, phase }) => BENCH.leavable.some((p) => p === phase) && !met.has(id))
        .map(({ id, title }) => new Option(title, id, false, id === chosen)),
    );
  }

  private piece(name: string): HTMLElement {
    return this.root.querySelector<HTMLElement>(`[data-${name}]`)!;
  }

  private today(): string {
    return dayIn(this.zone, Date.now());
  }

  /** What could not be kept outweighs what the store is like. */
  private warn(trouble: Trouble | undefined): void {
    const told = this.store.hasLoose && trouble !== 'full' ? (this.store.trouble ?? 'full') : trouble;
    this.piece('trouble').textContent = told ? BENCH.trouble[told] : '';
  }

  private say(text: string): void {
    this.piece('said').textContent = text;
  }
}
