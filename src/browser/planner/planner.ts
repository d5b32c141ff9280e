/** The planner page's element: answers or files in, the worker's markup out, and what to take along. */
import { dayIn } from '../day-in.ts';
import { languageTag } from '../language.ts';
import { saveFile } from '../save-file.ts';
import { PlannerClient } from './client.ts';
import { answersOf, areNamed, canPlan, type Drafts, emptyMachine, machineIds, newDrafts } from './drafts.ts';
import { fill, labelOf, markProblems, take } from './form.ts';
import { keep, keptDrafts, onKept, setAside } from './kept.ts';
import { DoneLog } from './log.ts';
import type { Asks } from './messages.ts';
import { filesInto, type Loaded } from './pick-files.ts';
import { answerProblems, fileProblems, machineTabs } from './pieces.ts';
import type { Shown } from './show.ts';
import { SeasonSlider } from './slider.ts';
import { PlanSlots } from './slots.ts';
import { StationSearch } from './station-search.ts';
import { takeAlong } from './take-along.ts';
import { SheetView } from './views.ts';
import { PLANNER } from './words.ts';

const PAUSE_MS = 250;

class SeasonPlanner extends HTMLElement {
  private client!: PlannerClient;
  private form!: HTMLFormElement;
  private stations!: StationSearch;
  private log!: DoneLog;
  private slider!: SeasonSlider;
  private views!: SheetView;
  private slots!: PlanSlots;
  private drafts!: Drafts;
  private at = 0;
  /** Set while files stand in place of the form. */
  private loaded = false;
  private shown: Shown | undefined;
  private timer = 0;
  private run = 0;

  connectedCallback(): void {
    const { base = '/', methods = '{}' } = this.dataset;
    this.client = new PlannerClient({ base: new URL(base, location.href).href, methods: JSON.parse(methods) });
    this.form = this.piece('form') as HTMLFormElement;
    this.drafts = keptDrafts() ?? newDrafts(languageTag(navigator.language), newId());
    this.stations = new StationSearch(this.piece('station'), this.client, (choice) => {
      Object.assign(this.drafts.machines[this.at]!, choice);
      this.changed();
    });
    this.log = new DoneLog(this.piece('log'), (log) => {
      this.drafts.machines[this.at]!.log = log;
      this.changed();
    });
    this.slider = new SeasonSlider(this.piece('slider') as HTMLInputElement, this.piece('season-end'), {
      moving: (lastUse) => this.move(lastUse),
      moved: (lastUse) => this.settle(lastUse),
      left: () => this.shown && this.show(this.shown),
    });
    this.views = new SheetView(this);
    this.slots = new PlanSlots(this.piece('result'));
    this.form.addEventListener('submit', (event) => {
      event.preventDefault();
      document.getElementById('your-plan')?.scrollIntoView();
    });
    this.form.addEventListener('input', (event) => {
      const { name } = event.target as HTMLInputElement;
      if (name) this.changed();
      if (name === 'units') this.showLog();
    });
    this.piece('remove').addEventListener('click', () => this.removeMachine());
    this.piece('back').addEventListener('click', () => this.backToForm());
    this.piece('tabs').addEventListener('click', (event) => this.tab(event));
    for (const button of this.querySelectorAll<HTMLElement>('[data-take]'))
      button.addEventListener('click', () => this.take(button.dataset.take!));
    filesInto(this, this.piece('drop'), (loaded) => this.load(loaded));
    this.aside();
    this.showMachine(0);
    // Another tab has written: what it has is newer.
    onKept(() => {
      this.drafts = keptDrafts() ?? this.drafts;
      this.showMachine(Math.min(this.at, this.drafts.machines.length - 1));
      if (!this.loaded) this.replan();
    });
    this.piece('planner').hidden = false;
    this.replan();
  }

  private piece(name: string): HTMLElement {
    return this.querySelector<HTMLElement>(`[data-${name}]`)!;
  }

  /** Something was answered: it is kept at once, and planned when typing pauses. */
  private changed(): void {
    clearTimeout(this.timer);
    this.drafts.home.revised = `${new Date().toISOString().slice(0, 19)}Z`;
    take(this.form, this.drafts, this.at);
    this.tabs();
    this.piece('not-kept').textContent = keep(this.drafts) ? '' : PLANNER.notKept;
    this.timer = window.setTimeout(() => this.replan(), PAUSE_MS);
  }

  private async replan(): Promise<void> {
    const { machines } = this.drafts;
    const sound = take(this.form, this.drafts, this.at);
    if (!sound || !canPlan(this.drafts)) {
      // A plan of other answers than those in sight would be taken for theirs.
      this.run++;
      this.piece('result').hidden = true;
      this.piece('to-plan').hidden = true;
      this.piece('problems').innerHTML = '';
      return this.say(!areNamed(machines) ? PLANNER.unnamed : sound ? PLANNER.start : PLANNER.unsound);
    }
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    const answers = answersOf(this.drafts, { timeZone, locale: languageTag(navigator.language) });
    const asOf = dayIn(timeZone, Date.now());
    await this.ask('form', { answers, asOf, machine: answers.machines[this.at]?.id }, ({ problems, shown }) => {
      markProblems(
        this.form,
        problems.filter((p) => p.machine === answers.machines[this.at]?.id),
      );
      const asked = problems.map((p) => ({
        ...p,
        machine: answers.machines.find(({ id }) => id === p.machine)?.name ?? p.machine,
        field: labelOf(this.form, p.field),
      }));
      this.piece('problems').innerHTML = answerProblems(asked);
      this.piece('result').hidden = !shown;
      if (shown) this.show(shown);
    });
  }

  /** Asks the worker; an answer that was overtaken by a later question is dropped. */
  private async ask<A extends keyof Asks>(
    ask: A,
    given: Asks[A][0],
    then: (answer: Asks[A][1]) => void,
  ): Promise<void> {
    const run = ++this.run;
    this.setAttribute('aria-busy', 'true');
    try {
      const answer = await this.client.ask(ask, given);
      if (run !== this.run) return;
      this.say('');
      then(answer);
    } catch (error) {
      if (run === this.run) this.say(`${PLANNER.failed} (${(error as Error).message})`);
    } finally {
      if (run === this.run) this.removeAttribute('aria-busy');
    }
  }

  private say(text: string): void {
    this.piece('status').textContent = text;
  }

  private show(shown: Shown): void {
    this.slots.put(shown);
    this.shown = shown;
    this.piece('title').textContent = shown.name;
    this.late(false);
    this.piece('to-plan').hidden = false;
    this.slider.show(shown.season);
    this.views.margins(shown.margins);
    this.querySelector<HTMLElement>('[data-take="calendar-all"]')!.hidden = shown.machines.length < 2;
    if (this.loaded) this.tabs();
  }

  /** While the slider moves: all that is in sight, for the newest day, and drawn before the next frame. */
  private async move(lastUse: string): Promise<void> {
    if (!this.shown) return;
    performance.mark('season-asked');
    const moving = this.views.inSight;
    const moved = await this.client.ask('move', { machine: this.shown.shown, lastUse, moving });
    if (!this.shown) return;
    this.slots.put(moved);
    this.late(true);
    // What the browser has to lay out before it can draw counts as well.
    void this.offsetHeight;
    performance.measure('season-moved', 'season-asked');
  }

  /** Marks what is worked out only when the slider is let go. */
  private late(is: boolean): void {
    this.piece('late').toggleAttribute('data-is-late', is);
  }

  private settle(lastUse: string): void {
    if (!this.shown) return;
    if (this.loaded) {
      this.ask('move', { machine: this.shown.shown, lastUse }, (shown) => this.show(shown));
      return;
    }
    const field = this.form.elements.namedItem('lastUse') as HTMLInputElement;
    field.value = lastUse;
    this.changed();
  }

  private showMachine(at: number): void {
    this.at = at;
    fill(this.form, this.drafts, at);
    take(this.form, this.drafts, at);
    this.stations.show(this.drafts.machines[at]!);
    this.showLog();
    this.piece('remove').hidden = this.drafts.machines.length < 2;
    delete this.piece('remove').dataset.sure;
    this.piece('remove').textContent = PLANNER.remove;
    this.tabs();
  }

  private showLog(): void {
    const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
    this.log.show(this.drafts.machines[this.at]!.log, this.drafts.home.units, dayIn(timeZone, Date.now()));
  }

  private tabs(): void {
    const names = this.loaded
      ? (this.shown?.machines ?? []).map((m) => m.name)
      : this.drafts.machines.map((m) => m.name);
    const current = this.loaded ? (this.shown?.machines ?? []).findIndex((m) => m.id === this.shown?.shown) : this.at;
    this.piece('tabs').innerHTML = machineTabs(names, current, this.loaded);
  }

  private tab(event: Event): void {
    const at = (event.target as HTMLElement).closest<HTMLElement>('[data-at]')?.dataset.at;
    if (at === undefined) return;
    if (this.loaded) {
      this.ask('show', { machine: this.shown!.machines[Number(at)]!.id }, (shown) => this.show(shown));
      return;
    }
    if (at === 'new') {
      this.drafts.machines.push(emptyMachine(this.drafts.machines.length + 1, this.drafts.machines[this.at]));
      this.showMachine(this.drafts.machines.length - 1);
      this.changed();
    } else this.showMachine(Number(at));
    this.replan();
    this.form.querySelector<HTMLElement>('[name=name]')?.focus();
  }

  private removeMachine(): void {
    const button = this.piece('remove');
    const { name } = this.drafts.machines[this.at]!;
    // Asked once more in place, since there is no way back.
    if (button.dataset.sure === undefined) {
      button.dataset.sure = '';
      button.textContent = PLANNER.removeSure(name);
      return;
    }
    this.drafts.machines.splice(this.at, 1);
    this.showMachine(Math.max(0, this.at - 1));
    this.changed();
  }

  /** Answers that could not be read are offered as a file, as they were found. */
  private aside(): void {
    const text = setAside();
    this.piece('aside').hidden = text === undefined;
    this.piece('save-aside').addEventListener('click', () =>
      saveFile('old-answers.json', 'application/json', setAside() ?? ''),
    );
  }

  private async load({ files, revised }: Loaded): Promise<void> {
    if (files.length === 0) return this.say(PLANNER.noFiles);
    this.say(PLANNER.working);
    await this.ask('files', { files, now: Date.now(), revised }, ({ problems, shown, count }) => {
      if (count === 0) return this.say(PLANNER.noFiles);
      this.loaded = true;
      this.form.hidden = true;
      this.piece('back').hidden = false;
      this.say(problems.length > 0 ? '' : PLANNER.filesRead(count));
      this.piece('problems').innerHTML = fileProblems(problems);
      this.piece('result').hidden = !shown;
      this.shown = undefined;
      if (shown) this.show(shown);
      else this.tabs();
    });
  }

  private backToForm(): void {
    this.loaded = false;
    this.form.hidden = false;
    this.piece('back').hidden = true;
    this.piece('problems').innerHTML = '';
    this.shown = undefined;
    this.showMachine(this.at);
    this.replan();
  }

  private async take(what: string): Promise<void> {
    const machine = this.shown?.shown;
    if (!this.loaded) {
      // What is taken along goes by these ids from now on, whatever its machine is called later.
      for (const [at, id] of machineIds(this.drafts.machines).entries()) this.drafts.machines[at]!.id = id;
      keep(this.drafts);
    }
    try {
      this.say(await takeAlong(this.client, what, machine));
    } catch (error) {
      this.say(`${PLANNER.failed} (${(error as Error).message})`);
    }
  }
}

/** Known by this for ever, so that reminders of two households never meet in one calendar. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(4));
  return `home-${[...bytes].map((b) => b.toString(16).padStart(2, '0')).join('')}`;
}

customElements.define('season-planner', SeasonPlanner);
