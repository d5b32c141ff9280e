/** The planner page's element: answers or files in, the worker's markup out, and what to take along. */
import { PlannerClient } from './client.ts';
import { areNamed, canPlan } from './drafts.ts';
import { labelOf, markProblems } from './form.ts';
import type { Asks } from './messages.ts';
import { OwnMachines, today } from './own-machines.ts';
import { filesInto, type Loaded } from './pick-files.ts';
import { answerProblems, fileProblems, machineTabs } from './pieces.ts';
import { SheetBoxes } from './sheet-boxes.ts';
import type { Shown } from './show.ts';
import { SeasonSlider } from './slider.ts';
import { PlanSlots } from './slots.ts';
import { takeAlong } from './take-along.ts';
import { SheetView } from './views.ts';
import { PLANNER } from './words.ts';

const PAUSE_MS = 250;

class SeasonPlanner extends HTMLElement {
  private client!: PlannerClient;
  private own!: OwnMachines;
  private slider!: SeasonSlider;
  private views!: SheetView;
  private slots!: PlanSlots;
  private boxes!: SheetBoxes;
  /** Set while files stand in place of the form. */
  private loaded = false;
  private shown: Shown | undefined;
  private timer = 0;
  private run = 0;

  connectedCallback(): void {
    const { base = '/', methods = '{}' } = this.dataset;
    this.client = new PlannerClient({ base: new URL(base, location.href).href, methods: JSON.parse(methods) });
    this.own = new OwnMachines((name) => this.piece(name), this.client, {
      answered: () => this.answered(),
      elsewhere: () => {
        this.tabs();
        if (!this.loaded) this.replan();
      },
    });
    this.slider = new SeasonSlider(this.piece('slider') as HTMLInputElement, this.piece('season-end'), {
      moving: (lastUse) => this.move(lastUse),
      moved: (lastUse) => this.settle(lastUse),
      left: () => this.shown && this.show(this.shown),
    });
    this.views = new SheetView(this);
    this.slots = new PlanSlots(this.piece('result'));
    this.boxes = new SheetBoxes(this.piece('result'), (step, done) => {
      const can = this.own.tick(step, done);
      this.say(can ? '' : PLANNER.doneWhole);
      return can;
    });
    this.own.form.addEventListener('submit', (event) => {
      event.preventDefault();
      document.getElementById('your-plan')?.scrollIntoView();
    });
    this.piece('back').addEventListener('click', () => this.backToForm());
    this.piece('tabs').addEventListener('click', (event) => this.tab(event));
    for (const button of this.querySelectorAll<HTMLElement>('[data-take]'))
      button.addEventListener('click', () => this.takeWith(button.dataset.take!));
    filesInto(this, this.piece('drop'), (loaded) => this.load(loaded));
    this.tabs();
    this.piece('planner').hidden = false;
    this.replan();
  }

  private piece(name: string): HTMLElement {
    return this.querySelector<HTMLElement>(`[data-${name}]`)!;
  }

  /** Something was answered: it is planned when typing pauses. */
  private answered(): void {
    clearTimeout(this.timer);
    this.tabs();
    this.timer = window.setTimeout(() => this.replan(), PAUSE_MS);
  }

  private async replan(): Promise<void> {
    const { drafts, form, current } = this.own;
    const sound = this.own.take();
    if (!sound || !canPlan(drafts)) {
      // A plan of other answers than those in sight would be taken for theirs.
      this.run++;
      this.piece('result').hidden = true;
      this.piece('to-plan').hidden = true;
      this.piece('problems').innerHTML = '';
      return this.say(!areNamed(drafts.machines) ? PLANNER.unnamed : sound ? PLANNER.start : PLANNER.unsound);
    }
    const answers = this.own.answers();
    const machine = answers.machines[current]?.id;
    await this.ask('form', { answers, asOf: today(), machine }, ({ problems, shown }) => {
      markProblems(
        form,
        problems.filter((p) => p.machine === machine),
      );
      const asked = problems.map((p) => ({
        ...p,
        machine: answers.machines.find(({ id }) => id === p.machine)?.name ?? p.machine,
        field: labelOf(form, p.field),
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
    this.put(shown);
    this.shown = shown;
    this.piece('title').textContent = shown.name;
    this.late(false);
    this.piece('to-plan').hidden = false;
    this.slider.show(shown.season);
    this.views.margins(shown.margins);
    this.querySelector<HTMLElement>('[data-take="calendar-all"]')!.hidden = shown.machines.length < 2;
    if (this.loaded) this.tabs();
  }

  /** Files keep their records themselves: their sheets have printed boxes. */
  private put(shown: Shown): void {
    if (this.loaded) this.slots.put(shown);
    else {
      this.boxes.around(() => this.slots.put(shown));
      this.own.nameSteps(this.boxes.titles());
    }
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
    this.own.endSeason(lastUse);
  }

  private tabs(): void {
    const { machines = [], shown } = this.shown ?? {};
    const [names, current] = this.loaded
      ? [machines.map((m) => m.name), machines.findIndex((m) => m.id === shown)]
      : [this.own.names, this.own.current];
    this.piece('tabs').innerHTML = machineTabs(names, current, this.loaded);
  }

  private tab(event: Event): void {
    const at = (event.target as HTMLElement).closest<HTMLElement>('[data-at]')?.dataset.at;
    if (at === undefined) return;
    if (this.loaded) {
      this.ask('show', { machine: this.shown!.machines[Number(at)]!.id }, (shown) => this.show(shown));
      return;
    }
    if (at === 'new') this.own.add();
    else this.own.show(Number(at));
    this.tabs();
    this.replan();
    this.own.form.querySelector<HTMLElement>('[name=name]')?.focus();
  }

  private async load({ files, revised }: Loaded): Promise<void> {
    if (files.length === 0) return this.say(PLANNER.noFiles);
    this.say(PLANNER.working);
    await this.ask('files', { files, now: Date.now(), revised }, ({ problems, shown, count }) => {
      if (count === 0) return this.say(PLANNER.noFiles);
      this.loaded = true;
      this.own.form.hidden = true;
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
    this.own.form.hidden = false;
    this.piece('back').hidden = true;
    this.piece('problems').innerHTML = '';
    this.shown = undefined;
    this.own.show(this.own.current);
    this.tabs();
    this.replan();
  }

  private async takeWith(what: string): Promise<void> {
    if (!this.loaded) this.own.holdIds();
    try {
      this.say(await takeAlong(this.client, what, this.shown?.shown));
    } catch (error) {
      this.say(`${PLANNER.failed} (${(error as Error).message})`);
    }
  }
}

customElements.define('season-planner', SeasonPlanner);
