/** The rounds of charging: boxes that can be ticked, and the record fetched at the first, or at once where the device has one. */

import { addBoxes } from './boxes.ts';
import { isRecorded } from './counts.ts';
import type { Rounds } from './rounds.ts';

class BenchRounds extends HTMLElement {
  private rounds: Promise<Rounds> | undefined;
  /** Boxes touched and not yet written down. */
  private readonly early = new Map<HTMLInputElement, boolean>();

  connectedCallback(): void {
    addBoxes(document, this.dataset.tick ?? '');
    document.addEventListener('change', ({ target }) => {
      const box = target as HTMLInputElement;
      if (!box.matches('input.box[data-machine]')) return;
      this.early.set(box, box.checked);
      void this.ask();
    });
    if (isRecorded()) void this.ask();
  }

  private async ask(): Promise<void> {
    this.rounds ??= import('./rounds.ts').then(({ Rounds }) => Rounds.open(this));
    try {
      await (await this.rounds).tick(this.early);
    } catch {
      this.rounds = undefined;
      this.querySelector('[data-trouble]')!.textContent = this.dataset.failed ?? '';
    }
  }
}

customElements.define('bench-rounds', BenchRounds);
