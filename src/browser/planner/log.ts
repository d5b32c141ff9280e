/** What was done and measured over the season, on the form: kept with the answers and written into the machine's file. */
import { html, type Markup } from '../../site/html.ts';
import { entriesOf, recordOf, type Said } from '../bench/entries.ts';
import { celsius, saidText } from '../bench/said-text.ts';
import { SAID } from '../bench/said-words.ts';
import { decimal, faultIn } from '../decimal.ts';
import { type Log, logOf, textOfLog } from './log-entries.ts';
import { PLANNER } from './words.ts';

export class DoneLog {
  private readonly root: HTMLElement;
  private readonly changed: (log: string) => void;
  private log: Log = { entries: [], unread: [] };
  private us = false;
  private titles: ReadonlyMap<string, string> = new Map();

  /**
   * @param root - the part of the form
   * @param changed - told of the log as a draft keeps it
   */
  constructor(root: HTMLElement, changed: (log: string) => void) {
    this.root = root;
    this.changed = changed;
    this.field('kind').addEventListener('change', () => this.ask());
    this.piece('write').addEventListener('click', () => this.write());
    root.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
      event.preventDefault();
      this.write();
    });
    root.addEventListener('click', ({ target }) => {
      const at = (target as HTMLElement).closest<HTMLElement>('[data-entry]')?.dataset.entry;
      if (at !== undefined) this.keep(this.log.entries.filter((_, i) => i !== Number(at)));
    });
  }

  /**
   * Shows one machine's log.
   * @param log - as its draft keeps it
   * @param units - of the household
   * @param today - nothing is done after it
   */
  show(log: string, units: string, today: string): void {
    this.log = logOf(log);
    this.us = units === 'us';
    this.field('date').max = today;
    this.piece('degrees').textContent = this.us ? '°F' : '°C';
    const warmth = this.field('temperature');
    [warmth.dataset.min, warmth.dataset.max] = this.us ? ['-76', '140'] : ['-60', '60'];
    this.ask();
    this.list();
  }

  /**
   * A step was ticked, or its tick taken back: the last one, since those before are of earlier seasons.
   * @param step - its name
   * @param done - today, or not
   * @param today - the day
   * @returns false where it is not by a tick of its own that it is done
   */
  tick(step: string, done: boolean, today: string): boolean {
    const { entries } = this.log;
    if (done) {
      this.keep([...entries, { kind: 'done', step, date: today }]);
      return true;
    }
    const at = entries.findLastIndex((said) => said.kind === 'done' && said.step === step);
    if (at < 0) return false;
    this.keep(entries.filter((_, i) => i !== at));
    return true;
  }

  /** Says steps by their titles. */
  name(titles: ReadonlyMap<string, string>): void {
    this.titles = titles;
    this.list();
  }

  private field(name: string): HTMLInputElement {
    return this.root.querySelector<HTMLInputElement>(`[data-log-field="${name}"]`)!;
  }

  private piece(name: string): HTMLElement {
    return this.root.querySelector<HTMLElement>(`[data-log-${name}]`)!;
  }

  private ask(): void {
    this.piece('reading').hidden = this.field('kind').value !== 'readings';
  }

  private write(): void {
    const kind = this.field('kind').value;
    const isReading = kind === 'readings';
    const asked = isReading ? ['date', 'voltage', 'temperature', 'rested'] : ['date'];
    if (!asked.every((name) => this.isSound(this.field(name)))) return;
    const number = (name: string) => decimal(this.field(name).value);
    const date = this.field('date').value;
    const said: Said = isReading
      ? {
          kind: 'readings',
          date,
          volts: number('voltage'),
          temperatureC: celsius(number('temperature'), this.us),
          restedH: number('rested'),
        }
      : kind === 'charged'
        ? { kind: 'charged', date, toPct: 100 }
        : { kind: 'done', step: kind, date };
    this.keep([...this.log.entries, said]);
    for (const name of ['voltage', 'temperature', 'rested']) this.field(name).value = '';
  }

  /** Says in place what is wrong. */
  private isSound(field: HTMLInputElement): boolean {
    field.setCustomValidity('');
    field.setCustomValidity(faultIn(field));
    return field.reportValidity();
  }

  private keep(entries: readonly Said[]): void {
    this.log.entries = entriesOf(recordOf(entries));
    this.list();
    this.changed(textOfLog(this.log));
  }

  /** A season has some ninety steps: those that were ticked one by one are folded away. */
  private list(): void {
    const rows: Record<'entries' | 'ticks', Markup[]> = { entries: [], ticks: [] };
    for (const [i, said] of this.log.entries.entries()) {
      const text = saidText(said, this.us, this.titles);
      const row = html`<li><strong>${SAID.kinds[said.kind]}</strong> ${text} <button type="button" data-entry="${i}">${PLANNER.unlog}<span class="unseen">: ${text}</span></button></li>`;
      rows[said.kind === 'done' && !Object.hasOwn(SAID.wholePhases, said.step) ? 'ticks' : 'entries'].push(row);
    }
    this.piece('entries').innerHTML = html`${rows.entries}`.text;
    this.piece('ticks').innerHTML = html`${rows.ticks}`.text;
    this.piece('steps').hidden = rows.ticks.length === 0;
    this.piece('count').textContent = PLANNER.ticked(rows.ticks.length);
  }
}
