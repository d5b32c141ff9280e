/** The bench record at work: forms into entries, entries into a list, ticks on the sheet, charges anew. Loaded when it is used. */
import { dayIn } from '../day-in.ts';
import { html } from '../html.ts';
import { PlannerClient } from '../planner/client.ts';
import { saveFile } from '../save-file.ts';
import { type Entry, recordOf, type Said, saidKey } from './entries.ts';
import { recordFile } from './export.ts';
import { saidOf } from './form.ts';
import { BenchStore, type Kept, type Trouble } from './store.ts';
import { Ticks } from './ticks.ts';
import { BENCH } from './words.ts';

export class Bench {
  private readonly root: HTMLElement;
  private readonly machine: string;
  private readonly zone: string | undefined;
  private readonly client: PlannerClient;
  private readonly ticks: Ticks;
  private readonly store: BenchStore;
  private kept: Kept = { entries: [], unread: [] };
  private planned = '';

  private constructor(root: HTMLElement, store: BenchStore) {
    this.root = root;
    this.store = store;
    this.machine = root.dataset.machine!;
    this.zone = document.body.dataset.zone;
    this.client = new PlannerClient({ base: new URL(root.dataset.base!, location.href).href, methods: {} });
    this.ticks = new Ticks((step, done) => this.tick(step, done));
    root.addEventListener('submit', (event) => this.submit(event));
    root.addEventListener('click', (event) => this.click(event));
    this.piece('import').addEventListener('change', (event) => this.import(event.target as HTMLInputElement));
    store.onChange((machine) => {
      if (machine === this.machine) void this.refresh();
    });
    for (const field of root.querySelectorAll<HTMLInputElement>('input[type=date]')) {
      field.max = this.today();
      field.value ||= this.today();
    }
    if (store.trouble) this.warn(store.trouble);
  }

  /**
   * Opens the record of a page.
   * @param ticked - the step whose box was the first thing touched: written before anything is shown, so that its mark stays
   */
  static async open(root: HTMLElement, ticked?: { step: string; done: boolean } | undefined): Promise<Bench> {
    const bench = new Bench(root, await BenchStore.open());
    if (ticked) await bench.tick(ticked.step, ticked.done);
    else await bench.refresh();
    return bench;
  }

  /** A step was ticked, or the tick was taken back. */
  async tick(step: string, done: boolean): Promise<void> {
    if (done) await this.write({ kind: 'done', step, date: this.today() });
    else await this.erase(this.kept.entries.filter((e) => e.kind === 'done' && e.step === step));
  }

  private piece(name: string): HTMLElement {
    return this.root.querySelector<HTMLElement>(`[data-${name}]`)!;
  }

  private today(): string {
    return dayIn(this.zone, Date.now());
  }

  private warn(trouble: Trouble): void {
    this.piece('trouble').textContent = BENCH.trouble[trouble];
  }

  private say(text: string): void {
    this.piece('said').textContent = text;
  }

  private async submit(event: Event): Promise<void> {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const said = saidOf(form);
    if (!said) return;
    const trouble = await this.write(said);
    // What could not be kept stays in the fields as well.
    if (!trouble) for (const field of form.querySelectorAll<HTMLInputElement>('[data-once]')) field.value = '';
  }

  private async write(...all: Said[]): Promise<Trouble | undefined> {
    let trouble: Trouble | undefined;
    for (const said of all)
      trouble =
        (await this.store.add({ ...said, format: 1, id: crypto.randomUUID(), machine: this.machine } as Entry)) ??
        trouble;
    if (trouble) this.warn(trouble);
    else {
      this.say(BENCH.saved);
      remember();
    }
    await this.refresh();
    return trouble;
  }

  private async erase(entries: readonly Entry[]): Promise<void> {
    for (const entry of entries) await this.store.remove(entry);
    await this.refresh();
  }

  private async click(event: Event): Promise<void> {
    const button = (event.target as HTMLElement).closest<HTMLElement>('[data-act]');
    if (!button) return;
    const { act, id } = button.dataset;
    if (act === 'remove') await this.erase(this.kept.entries.filter((e) => e.id === id));
    if (act === 'unread')
      saveFile(`${this.machine}-unread.json`, 'application/json', JSON.stringify(this.kept.unread, null, 2));
    if (act === 'export') {
      const exported = `${new Date().toISOString().slice(0, 19)}Z`;
      saveFile(
        `${this.machine}-${exported.slice(0, 10)}.yaml`,
        'text/yaml',
        recordFile(this.machine, recordOf(this.kept.entries), exported),
      );
    }
  }

  private async import(input: HTMLInputElement): Promise<void> {
    const met = new Set(this.kept.entries.map(saidKey));
    const fresh: Said[] = [];
    const wrong: string[] = [];
    for (const file of input.files ?? []) {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const read = await this.client.ask('readRecord', { file: { path: file.name, bytes }, asOf: this.today() });
      wrong.push(...read.problems.map((p) => `${p.file}:${p.line}:${p.column} ${p.field} ${p.what}. ${p.fix}`));
      if (read.machine !== undefined && read.machine !== this.machine)
        wrong.push(`${file.name}: ${BENCH.otherMachine(read.machine)}`);
      else
        for (const [kind, list] of Object.entries(read.entries ?? {}))
          for (const item of list) {
            const said = { kind, ...item } as Said;
            if (!met.has(saidKey(said))) fresh.push(said);
            met.add(saidKey(said));
          }
    }
    input.value = '';
    await this.write(...fresh);
    this.say(BENCH.imported(fresh.length));
    this.piece('problems').innerHTML = html`${wrong.map((text) => html`<li>${text}</li>`)}`.text;
  }

  /** Shows what is kept now, from this tab or another. */
  private async refresh(): Promise<void> {
    this.kept = await this.store.of(this.machine);
    const { entries, unread } = this.kept;
    this.piece('entries').innerHTML = html`${entries.map(
      (e) =>
        html`<li><span><strong>${BENCH.kinds[e.kind]}</strong> ${lineOf(e)}</span> <button type="button" data-act="remove" data-id="${e.id}">${BENCH.remove}<span class="unseen">: ${lineOf(e)}</span></button></li>`,
    )}${entries.length === 0 && html`<li class="quiet">${BENCH.none}</li>`}`.text;
    this.piece('unread').innerHTML =
      unread.length === 0
        ? ''
        : html`<p>${BENCH.unread(unread.length)}</p><button type="button" data-act="unread">${BENCH.unreadSave}</button>`
            .text;
    this.ticks.show(new Set(entries.flatMap((e) => (e.kind === 'done' ? [e.step] : []))));
    await this.replan();
  }

  /** The charges of the page, where readings or charges of this device decide them. */
  private async replan(): Promise<void> {
    const target = document.querySelector('[data-bench-charges]');
    const record = recordOf(this.kept.entries);
    const key = JSON.stringify([record.readings, record.charged]);
    const nothing = record.readings.length + record.charged.length === 0;
    if (!target || key === this.planned || (nothing && this.planned === '')) return;
    this.planned = key;
    try {
      const { charges, first, picture } = await this.client.ask('record', {
        machine: this.machine,
        entries: record,
        asOf: this.today(),
      });
      if (key !== this.planned) return;
      target.innerHTML = charges;
      const number = document.querySelector('.numbers .big');
      if (number && first !== '') number.textContent = first;
      const drawn = document.querySelector('.figure-battery');
      if (drawn && picture !== '') drawn.outerHTML = picture;
      this.piece('replanned').textContent = BENCH.replanned;
    } catch {
      this.planned = '';
      this.piece('replanned').textContent = BENCH.replanFailed;
    }
  }
}

function lineOf(e: Entry): string {
  switch (e.kind) {
    case 'readings':
      return `${e.date}: ${e.volts} V, ${e.temperatureC} °C, ${e.restedH} h`;
    case 'charged':
      return `${e.date}: ${e.toPct} %`;
    case 'done':
      return `${e.date}: ${e.step}`;
    case 'notes':
      return `${e.date}: ${e.text}`;
    case 'asLeft':
      return [e.item, e.where, e.since].filter(Boolean).join(', ');
  }
}

/** Pages opened from now on load the record at once; the browser is asked not to clear it away. */
function remember(): void {
  try {
    localStorage.setItem('idle-season.bench', '1');
    void navigator.storage?.persist?.();
  } catch {
    // A window that keeps nothing has been told of already.
  }
}
