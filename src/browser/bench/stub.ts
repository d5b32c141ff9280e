/**
 * What every machine page carries of the bench record: boxes that can be ticked, and the rest fetched at the first use, or at
 * once where this device has a record. What is done before the rest is there waits for it.
 */

import type { Bench } from './bench.ts';
import { addBoxes } from './boxes.ts';
import { isRecorded } from './counts.ts';

class BenchRecord extends HTMLElement {
  private bench: Promise<Bench> | undefined;
  /** Boxes touched before the record was there. */
  private readonly early = new Map<string, boolean>();

  connectedCallback(): void {
    addBoxes(document, this.dataset.tick ?? '');
    for (const step of document.querySelectorAll<HTMLElement>('.step[data-leave]')) this.addLeave(step);
    document.addEventListener('change', ({ target }) => this.changed(target as HTMLInputElement));
    this.addEventListener('submit', (event) => {
      event.preventDefault();
      this.ask((bench) => bench.submit(event.target as HTMLFormElement));
    });
    this.addEventListener('click', ({ target }) => {
      const { act, id } = (target as HTMLElement).closest<HTMLElement>('[data-act]')?.dataset ?? {};
      if (act) this.ask((bench) => bench.act(act, id));
    });
    this.querySelector('details')?.addEventListener('toggle', () => this.ask());
    if (isRecorded()) this.ask();
  }

  private changed(box: HTMLInputElement): void {
    const { step } = box.dataset;
    if (box.matches('input.box') && step !== undefined) {
      this.early.set(step, box.checked);
      this.ask((bench) => bench.tick(this.early));
    } else if (box.matches('[data-import]')) this.ask((bench) => bench.import(box));
  }

  /** A step that can be left out on purpose leads to the form that says so. */
  private addLeave(step: HTMLElement): void {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'leave no-print';
    button.textContent = this.dataset.leave ?? '';
    button.ariaLabel = `${button.textContent}: ${step.querySelector('.title')?.textContent ?? ''}`;
    button.addEventListener('click', () => this.ask((bench) => bench.leaveOut(step.dataset.step!)));
    step.append(button);
  }

  private async ask(what?: (bench: Bench) => Promise<unknown>): Promise<void> {
    this.bench ??= import('./bench.ts').then(({ Bench }) => Bench.open(this, this.early));
    try {
      const bench = await this.bench;
      await what?.(bench);
    } catch {
      this.bench = undefined;
      this.querySelector('[data-trouble]')!.textContent = this.dataset.failed ?? '';
    }
  }
}

customElements.define('bench-record', BenchRecord);
