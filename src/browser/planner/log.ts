/** What was done and measured over the season, on the form: kept with the answers and written into the machine's file. */
import { html } from '../../site/html.ts';
import { type LogEntry, logOf, textOfLog } from './log-entries.ts';
import { PLANNER } from './words.ts';

export class DoneLog {
  private readonly root: HTMLElement;
  private readonly changed: (log: string) => void;
  private entries: LogEntry[] = [];
  private units = '';

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
    this.piece('entries').addEventListener('click', ({ target }) => {
      const at = (target as HTMLElement).closest<HTMLElement>('[data-entry]')?.dataset.entry;
      if (at !== undefined) this.keep(this.entries.filter((_, i) => i !== Number(at)));
    });
  }

  /**
   * Shows one machine's log.
   * @param log - as its draft keeps it
   * @param units - of the household
   * @param today - nothing is done after it
   */
  show(log: string, units: string, today: string): void {
    this.entries = logOf(log);
    this.units = units;
    this.field('date').max = today;
    this.piece('degrees').textContent = units === 'us' ? '°F' : '°C';
    const warmth = this.field('temperature');
    [warmth.min, warmth.max] = units === 'us' ? ['-76', '140'] : ['-60', '60'];
    this.ask();
    this.list();
  }

  private field(name: string): HTMLInputElement {
    return this.root.querySelector<HTMLInputElement>(`[data-log-field="${name}"]`)!;
  }

  private piece(name: string): HTMLElement {
    return this.root.querySelector<HTMLElement>(`[data-log-${name}]`)!;
  }

  private ask(): void {
    this.piece('reading').hidden = this.field('kind').value !== 'reading';
  }

  private write(): void {
    const kind = this.field('kind').value as LogEntry['kind'];
    const asked = kind === 'reading' ? ['date', 'voltage', 'temperature', 'rested'] : ['date'];
    if (!asked.every((name) => this.field(name).reportValidity())) return;
    const number = (name: string) => this.field(name).valueAsNumber;
    const date = this.field('date').value;
    const warmth = this.units === 'us' ? (number('temperature') - 32) / 1.8 : number('temperature');
    const entry: LogEntry =
      kind === 'reading'
        ? {
            kind,
            date,
            volts: number('voltage'),
            temperatureC: Math.round(warmth * 10) / 10,
            restedH: number('rested'),
          }
        : { kind, date };
    const same = JSON.stringify(entry);
    this.keep([...this.entries.filter((other) => JSON.stringify(other) !== same), entry]);
    for (const name of ['voltage', 'temperature', 'rested']) this.field(name).value = '';
  }

  private keep(entries: LogEntry[]): void {
    this.entries = entries.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
    this.list();
    this.changed(textOfLog(this.entries));
  }

  private list(): void {
    this.piece('entries').innerHTML = this.entries
      .map(
        (entry, i) =>
          html`<li>${PLANNER.logged(entry, this.units === 'us')} <button type="button" data-entry="${i}">${PLANNER.unlog}<span class="unseen"> ${PLANNER.logged(entry, this.units === 'us')}</span></button></li>`
            .text,
      )
      .join('');
  }
}
