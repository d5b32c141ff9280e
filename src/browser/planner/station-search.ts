/** Finds a weather station by name or by coordinates; a combobox with a list of what was found. */
import type { PlannerClient } from './client.ts';
import type { StationFound } from './messages.ts';
import { PLANNER } from './words.ts';

export interface StationChoice {
  station: string;
  stationName: string;
  country: string;
  /** "52.4,-113.8" where it is the nearest to a town or to coordinates that were typed, else empty. */
  point: string;
  /** The town that it is the nearest to, else empty. */
  town: string;
}

/** Typing waits this long for the next key [ms]. */
const PAUSE_MS = 200;

export class StationSearch {
  private readonly input: HTMLInputElement;
  private readonly list: HTMLElement;
  private readonly said: HTMLElement;
  private readonly client: PlannerClient;
  private readonly chosen: (choice: StationChoice) => void;
  private readonly reader: () => { zone: string; units: string };
  private chosenName = '';
  private found: StationFound[] = [];
  private active = -1;
  private timer = 0;
  private asked = 0;

  /**
   * @param reader - the device's time zone and the units of the form, as they are now
   */
  constructor(
    root: HTMLElement,
    client: PlannerClient,
    reader: () => { zone: string; units: string },
    chosen: (choice: StationChoice) => void,
  ) {
    this.reader = reader;
    this.input = root.querySelector('input')!;
    this.list = root.querySelector('[role=listbox]')!;
    this.said = root.querySelector('[role=status]')!;
    this.client = client;
    this.chosen = chosen;
    this.input.addEventListener('input', () => {
      clearTimeout(this.timer);
      this.timer = window.setTimeout(() => this.search(), PAUSE_MS);
    });
    this.input.addEventListener('keydown', (event) => this.key(event));
    root.querySelector('[data-here]')!.addEventListener('click', () => this.here());
    this.input.addEventListener('blur', () => this.close());
    // The field keeps the focus, or the list would be gone before it is clicked.
    this.list.addEventListener('pointerdown', (event) => event.preventDefault());
    this.list.addEventListener('click', (event) => {
      const at = [...this.list.children].indexOf((event.target as Element).closest('[role=option]')!);
      if (at >= 0) this.choose(at);
    });
  }

  /** Shows what was chosen earlier. */
  show({ stationName, point, town }: Pick<StationChoice, 'stationName' | 'point' | 'town'>): void {
    this.input.value = town || point.replace(',', ', ') || stationName;
    this.chosenName = stationName;
    this.said.textContent = stationName === '' ? '' : PLANNER.stationChosen(stationName);
    this.close();
  }

  /** The device's own place, to a tenth of a degree: enough for a station, and it stays here. */
  private here(): void {
    const failed = () => {
      this.said.textContent = PLANNER.hereNot;
    };
    if (!navigator.geolocation) {
      failed();
      return;
    }
    navigator.geolocation.getCurrentPosition(({ coords }) => {
      this.input.value = `${coords.latitude.toFixed(1)}, ${coords.longitude.toFixed(1)}`;
      this.input.focus();
      void this.search();
    }, failed);
  }

  private async search(): Promise<void> {
    const query = this.input.value.trim();
    const asked = ++this.asked;
    if (query.length < 2) {
      this.close();
      return;
    }
    let found: StationFound[];
    try {
      found = await this.client.ask('stations', { query, ...this.reader() });
    } catch {
      this.said.textContent = PLANNER.failed;
      return;
    }
    if (asked !== this.asked) return;
    this.found = found;
    this.active = -1;
    const still = this.chosenName === '' ? '' : PLANNER.stationKept(this.chosenName);
    this.said.textContent = [found.length === 0 ? PLANNER.stationNone : '', still].filter(Boolean).join(' ');
    this.list.replaceChildren(
      ...found.map((station, i) => {
        const item = document.createElement('li');
        item.id = `station-${i}`;
        item.role = 'option';
        item.ariaSelected = 'false';
        item.textContent = station.label;
        return item;
      }),
    );
    this.list.hidden = found.length === 0;
    this.input.setAttribute('aria-expanded', String(found.length > 0));
  }

  private key(event: KeyboardEvent): void {
    if (event.key === 'Enter') event.preventDefault();
    if (this.list.hidden) return;
    if (event.key === 'Escape') this.close();
    if (event.key === 'Enter') this.choose(Math.max(0, this.active));
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    this.active = (this.active + step + this.found.length) % this.found.length;
    for (const [i, item] of [...this.list.children].entries()) item.ariaSelected = String(i === this.active);
    this.input.setAttribute('aria-activedescendant', `station-${this.active}`);
  }

  private choose(at: number): void {
    const station = this.found[at];
    if (!station) return;
    const { id, name, country, point = '', town = '' } = station;
    const choice = { station: id, stationName: name, country, point, town };
    this.show(choice);
    this.chosen(choice);
  }

  private close(): void {
    this.list.hidden = true;
    this.input.setAttribute('aria-expanded', 'false');
    this.input.removeAttribute('aria-activedescendant');
  }
}
