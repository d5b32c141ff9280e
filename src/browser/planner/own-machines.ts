/** The person's own machines: the form, its station search and its log, the machine that is shown, and what the device keeps. */
import { writtenDate } from '../../planner/written.ts';
import { dayIn } from '../day-in.ts';
import { languageTag } from '../language.ts';
import { saveFile } from '../save-file.ts';
import type { PlannerClient } from './client.ts';
import { answersOf, type Drafts, emptyMachine, machineIds, newDrafts, nextRest } from './drafts.ts';
import { fill, take } from './form.ts';
import { forgetAside, keep, keptDrafts, onKept, setAside } from './kept.ts';
import { DoneLog } from './log.ts';
import { StationSearch } from './station-search.ts';
import { PLANNER } from './words.ts';

interface Heard {
  /** Something was answered; the answers are kept already. */
  answered: () => void;
  /** Another tab has answered. */
  elsewhere: () => void;
}

export class OwnMachines {
  readonly form: HTMLFormElement;
  drafts: Drafts;
  private at = 0;
  private readonly piece: (name: string) => HTMLElement;
  private readonly stations: StationSearch;
  private readonly log: DoneLog;
  private readonly heard: Heard;

  /**
   * @param piece - a part of the page by its name
   * @param client - finds stations
   * @param heard - told of what changes
   */
  constructor(piece: (name: string) => HTMLElement, client: PlannerClient, heard: Heard) {
    this.piece = piece;
    this.heard = heard;
    this.form = piece('form') as HTMLFormElement;
    this.drafts = keptDrafts() ?? newDrafts(languageTag(navigator.language), newId());
    this.stations = new StationSearch(
      piece('station'),
      client,
      () => ({ zone: timeZone(), units: this.drafts.home.units }),
      (choice) => {
        Object.assign(this.shown, choice);
        this.changed();
      },
    );
    this.log = new DoneLog(piece('log'), (log) => {
      this.shown.log = log;
      this.changed();
    });
    this.form.addEventListener('input', (event) => {
      const { name } = event.target as HTMLInputElement;
      if (name) this.changed();
      if (name === 'units') this.showLog();
    });
    piece('remove').addEventListener('click', () => this.remove());
    piece('next-rest').addEventListener('click', () => {
      Object.assign(this.shown, nextRest(this.shown, today()));
      this.show(this.at);
      this.changed();
    });
    // What another tab has written is newer.
    onKept(() => {
      this.drafts = keptDrafts() ?? this.drafts;
      this.show(Math.min(this.at, this.drafts.machines.length - 1));
      heard.elsewhere();
    });
    this.showAside();
    this.show(0);
  }

  get names(): string[] {
    return this.drafts.machines.map((m) => m.name);
  }

  /** Which machine the form shows. */
  get current(): number {
    return this.at;
  }

  /** Takes what the form holds; false where a field is out of its bounds. */
  take(): boolean {
    return take(this.form, this.drafts, this.at);
  }

  /** As answers, with what the device says of itself. */
  answers() {
    return answersOf(this.drafts, { timeZone: timeZone(), locale: languageTag(navigator.language) });
  }

  /** Shows the machine at this place. */
  show(at: number): void {
    this.at = at;
    fill(this.form, this.drafts, at);
    this.take();
    this.stations.show(this.shown);
    this.showLog();
    this.showOver();
    this.piece('remove').hidden = this.drafts.machines.length < 2;
    delete this.piece('remove').dataset.sure;
    this.piece('remove').textContent = PLANNER.remove;
  }

  /** A step of the shown machine was ticked on a sheet, or its tick taken back; false where that cannot be. */
  tick(step: string, done: boolean): boolean {
    return this.log.tick(step, done, today());
  }

  /** What the steps of the shown machine are called. */
  nameSteps(titles: ReadonlyMap<string, string>): void {
    this.log.name(titles);
  }

  add(): void {
    const { machines } = this.drafts;
    machines.push(emptyMachine(machines.length + 1, this.shown));
    this.show(machines.length - 1);
    this.changed();
  }

  /** Another last day of use, as if it had been typed. */
  endSeason(lastUse: string): void {
    (this.form.elements.namedItem('lastUse') as HTMLInputElement).value = lastUse;
    this.changed();
  }

  /** What is taken along goes by these ids from now on, whatever its machine is called later. */
  holdIds(): void {
    for (const [at, id] of machineIds(this.drafts.machines).entries()) this.drafts.machines[at]!.id = id;
    keep(this.drafts);
  }

  private get shown() {
    return this.drafts.machines[this.at]!;
  }

  private changed(): void {
    this.drafts.home.revised = `${new Date().toISOString().slice(0, 19)}Z`;
    this.take();
    this.showOver();
    this.piece('not-kept').textContent = keep(this.drafts) ? '' : PLANNER.notKept;
    this.heard.answered();
  }

  private showLog(): void {
    this.log.show(this.shown.log, this.drafts.home.units, today());
  }

  /** Who comes back after the season is offered the next one; a day that is still being typed is none. */
  private showOver(): void {
    const next = nextRest(this.shown, today());
    this.piece('over').hidden = next === undefined;
    const written = (day: string) => (day === '' ? '' : writtenDate(day, languageTag(navigator.language)));
    if (next) this.piece('over-said').textContent = PLANNER.over(written(next.lastUse), written(next.firstUse));
  }

  private remove(): void {
    const button = this.piece('remove');
    // Asked once more in place, since there is no way back.
    if (button.dataset.sure === undefined) {
      button.dataset.sure = '';
      button.textContent = PLANNER.removeSure(this.shown.name);
      return;
    }
    this.drafts.machines.splice(this.at, 1);
    this.show(Math.max(0, this.at - 1));
    this.changed();
  }

  /** Answers that could not be read are offered as a file, as they were found, until they have been saved and are let go. */
  private showAside(): void {
    const aside = this.piece('aside');
    aside.hidden = setAside() === undefined;
    this.piece('save-aside').addEventListener('click', () => {
      saveFile('old-answers.json', 'application/json', setAside() ?? '');
      this.piece('forget-aside').hidden = false;
    });
    this.piece('forget-aside').addEventListener('click', () => {
      forgetAside();
      aside.hidden = true;
    });
  }
}

/** The time zone of the device. */
const timeZone = () => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** The day on the device. */
export const today = () => dayIn(timeZone(), Date.now());

/** Known by this for ever, so that reminders of two households never meet in one calendar. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(4));
  return `home-${[...bytes].map((b) => b.toString(16).padStart(2, '0')).join('')}`;
}
