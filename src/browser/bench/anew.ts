/** What the page shows of its plan, worked out anew where the device's record decides it. */
import type { PlannerClient } from '../planner/client.ts';
import { saveFile } from '../save-file.ts';
import { type Entry, recordOf } from './entries.ts';
import { forgetNext, noteNext } from './moved.ts';
import { showPlanned } from './page-steps.ts';
import type { Replanned, StepList } from './replan.ts';
import { BENCH } from './words.ts';

/** What moves a plan, beside ticked look-ins; of other machines every tick is taken for one. */
const MOVES: readonly Entry['kind'][] = ['readings', 'charged', 'skipped', 'finishedJobs', 'odometer', 'engineHours'];

export class Anew {
  private readonly root: HTMLElement;
  private readonly client: PlannerClient;
  private readonly lookIns: ReadonlySet<string>;
  private planned = '';
  private isPlanned = false;
  private isMoved = false;

  /** @param lookIns - steps of look-ins: a ticked charge is one, and moves the plan */
  constructor(root: HTMLElement, client: PlannerClient, lookIns: ReadonlySet<string>) {
    this.root = root;
    this.client = client;
    this.lookIns = lookIns;
    const file = `/calendar/${root.dataset.machine}.ics`;
    document.addEventListener('click', (event) => {
      const link = (event.target as Element).closest<HTMLAnchorElement>('a[download]');
      if (!this.isPlanned || !link || !new URL(link.href).pathname.endsWith(file)) return;
      event.preventDefault();
      void this.saveCalendar(root.dataset.machine);
    });
  }

  /**
   * Plans anew where something was written that moves the plan.
   * @param entries - all of the device
   * @param asOf - today
   */
  async show(entries: readonly Entry[], asOf: string): Promise<void> {
    const { input, machine = '' } = this.root.dataset;
    const moving = entries.filter(
      (e) => MOVES.includes(e.kind) || (e.kind === 'done' && (e.machine !== machine || this.lookIns.has(e.step))),
    );
    if (moving.length === 0) forgetNext();
    if (input === undefined || (moving.length === 0 && this.planned === '')) return;
    const ids = [...new Set(entries.map((e) => e.machine))];
    const records = Object.fromEntries(ids.map((id) => [id, recordOf(entries.filter((e) => e.machine === id))]));
    const key = JSON.stringify(records);
    if (key === this.planned) return;
    this.planned = key;
    this.isMoved = moving.length > 0;
    this.say(BENCH.planning);
    try {
      const now = new Date().toISOString();
      const shown = await this.client.ask('record', { input, machine, records, asOf, now });
      if (key !== this.planned) return;
      this.isPlanned = true;
      this.put(shown);
    } catch {
      if (key !== this.planned) return;
      this.planned = '';
      this.say(BENCH.replanFailed);
    }
  }

  /**
   * Hands out the calendar of the plan that was made anew.
   * @param machine - id; all machines where it is absent
   */
  async saveCalendar(machine: string | undefined): Promise<void> {
    const name = `${machine ?? 'all'}.ics`;
    try {
      const { base = '/' } = this.root.dataset;
      // Without the file that was handed out before, nothing can be taken back; what moved moves all the same.
      const earlier = await fetch(`${base}calendar/${name}`).then(
        (response) => (response.ok ? response.text() : ''),
        () => '',
      );
      saveFile(name, 'text/calendar', await this.client.ask('recordCalendar', { machine, earlier }));
    } catch {
      this.say(BENCH.calendarFailed);
    }
  }

  private put(shown: Replanned): void {
    const { whole, list, tick = '', machine = '' } = this.root.dataset;
    for (const [id, markup] of Object.entries(shown.sections)) putSection(id, markup);
    for (const [name, markup] of Object.entries(shown.lists)) {
      const old = document.querySelector(`dl.${name}`);
      if (old) old.outerHTML = markup;
    }
    if (list) showPlanned(shown.steps[list as StepList], tick, (id) => whole !== undefined || this.lookIns.has(id));
    if (this.isMoved) noteNext(shown.next);
    const said = shown.next[machine]?.said ?? '';
    this.say(said === '' ? BENCH.replannedNone : BENCH.replanned(said));
    this.root.querySelector<HTMLElement>('[data-calendars]')!.hidden = whole === undefined;
    this.root.querySelector<HTMLElement>('[data-partly]')!.hidden = whole !== undefined;
    this.noteAbove();
  }

  /** Above what moved, it is said that it did. */
  private noteAbove(): void {
    if (document.querySelector('.anew')) return;
    const note = document.createElement('p');
    note.className = 'anew';
    note.append(BENCH.anew, ' ');
    const link = Object.assign(document.createElement('a'), { href: '#bench', textContent: BENCH.anewLink });
    link.className = 'no-print';
    note.append(link);
    (document.getElementById('dates') ?? document.querySelector('.sheet-head'))?.after(note);
  }

  private say(text: string): void {
    this.root.querySelector<HTMLElement>('[data-replanned]')!.textContent = text;
  }
}

/** A section in the place of the one with the same heading; before the dates where there was none. */
function putSection(id: string, markup: string): void {
  const old = document.getElementById(id)?.closest('section');
  if (old) old.outerHTML = markup;
  else if (markup !== '' && document.getElementById('dates'))
    document.getElementById('dates')!.closest('section')!.insertAdjacentHTML('beforebegin', markup);
}
