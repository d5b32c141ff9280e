/** The end of the season on a slider: days before and after the planned one; the newest position alone is worked out. */
import { addDays, daysBetween, earlier } from '../../planner/dates.ts';
import { englishFor } from '../../planner/written.ts';
import { languageTag } from '../language.ts';
import { PLANNER } from './words.ts';

interface Heard {
  moving: (lastUse: string) => Promise<void>;
  moved: (lastUse: string) => void;
  /** The finger meant the page: what was shown before is to be shown again. */
  left: () => void;
}

const BEFORE_DAYS = 42;
const AFTER_DAYS = 56;
/** As short as a rest may be [d]. */
const SHORTEST = 7;

export class SeasonSlider {
  private readonly input: HTMLInputElement;
  private readonly said: HTMLElement;
  private readonly heard: Heard;
  private readonly date = new Intl.DateTimeFormat(englishFor(languageTag(navigator.language)), {
    timeZone: 'UTC',
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
  private from = '';
  private stood = '';
  private busy = false;
  private held = false;
  /** Left while a position was still being worked out. */
  private leaving = false;

  constructor(input: HTMLInputElement, said: HTMLElement, heard: Heard) {
    this.input = input;
    this.said = said;
    this.heard = heard;
    input.addEventListener('input', () => {
      this.held = true;
      this.print();
      void this.next();
    });
    // A finger that scrolls the page may begin on it: then it stands where it stood.
    input.addEventListener('pointerdown', () => {
      this.stood = input.value;
    });
    input.addEventListener('pointercancel', () => {
      input.value = this.stood;
      this.held = false;
      this.leaving = this.busy;
      if (!this.busy) heard.left();
    });
    input.addEventListener('change', () => {
      if (input.value === this.stood && !this.held) return;
      this.held = false;
      heard.moved(this.day());
    });
  }

  /** A plan is shown: its last day of use is where the slider stands; the ends stay while it is moved about. */
  show({ lastUse, firstUse }: { lastUse: string; firstUse: string }): void {
    if (this.held) return;
    const inside = this.from !== '' && Math.abs(daysBetween(this.from, lastUse)) <= AFTER_DAYS;
    const to = Number(this.input.max);
    if (!inside || daysBetween(this.from, lastUse) > to) this.from = lastUse;
    const latest = daysBetween(this.from, earlier(addDays(this.from, AFTER_DAYS), addDays(firstUse, -SHORTEST)));
    this.input.min = String(-BEFORE_DAYS);
    this.input.max = String(Math.max(0, latest));
    this.input.value = String(daysBetween(this.from, lastUse));
    this.print();
  }

  private day(): string {
    return addDays(this.from, Number(this.input.value));
  }

  private print(): void {
    const text = this.date.format(new Date(`${this.day()}T00:00:00Z`));
    this.said.textContent = text;
    this.input.setAttribute('aria-valuetext', PLANNER.seasonEnd(text));
  }

  /** One question at a time; when it is answered, the position of that moment is the next one. */
  private async next(): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    for (let asked = ''; this.held && asked !== this.day(); ) {
      asked = this.day();
      await this.heard.moving(asked).catch(() => undefined);
    }
    this.busy = false;
    if (this.leaving) this.heard.left();
    this.leaving = false;
  }
}
