/**
 * What every machine page carries of the bench record: boxes that can be ticked, and the rest fetched at the first use, or at
 * once where this device has a record.
 */
import type { Bench } from './bench.ts';

class BenchRecord extends HTMLElement {
  private bench: Promise<Bench> | undefined;

  connectedCallback(): void {
    const words = this.dataset.tick ?? '';
    for (const box of document.querySelectorAll<HTMLElement>('.step[data-step] > .box')) {
      const tick = document.createElement('input');
      tick.type = 'checkbox';
      tick.className = 'box';
      tick.dataset.step = box.parentElement!.dataset.step!;
      tick.defaultChecked = box.classList.contains('is-done');
      tick.ariaLabel = `${words}${box.parentElement!.querySelector('.title')?.firstChild?.textContent?.trim() ?? ''}`;
      tick.addEventListener('change', () => this.open(tick), { once: true });
      box.replaceWith(tick);
    }
    this.querySelector('details')?.addEventListener('toggle', () => this.open());
    try {
      if (localStorage.getItem('idle-season.bench') !== null) this.open();
    } catch {
      // No storage, no record.
    }
  }

  private open(first?: HTMLInputElement): void {
    if (this.bench) return;
    const ticked = first && { step: first.dataset.step!, done: first.checked };
    this.bench = import('./bench.ts').then(({ Bench }) => Bench.open(this, ticked));
    this.bench.catch(() => {
      this.bench = undefined;
    });
  }
}

customElements.define('bench-record', BenchRecord);
