/** The shown plan in the page: markup put in place where it is not the same as before, and what is folded when it is opened. */
import type { Shown, Slot, Slots } from './show.ts';

export class PlanSlots {
  private readonly root: HTMLElement;
  private slots: Slots = {};
  private folds: Shown['folds'] = {};
  /** What stands in an opened fold. */
  private readonly filled = new WeakMap<HTMLDetailsElement, string>();

  constructor(root: HTMLElement) {
    this.root = root;
    // A click comes before the fold opens, so that it never opens empty; the toggle is for what opens it otherwise.
    for (const event of ['click', 'toggle'] as const)
      root.addEventListener(
        event,
        ({ target }) => {
          const fold = (target as HTMLElement).closest<HTMLDetailsElement>('details[data-fold]');
          if (fold && (fold.open || event === 'click')) this.fill(fold);
        },
        true,
      );
  }

  /** Puts what has changed in place. */
  put({ slots, folds }: Pick<Shown, 'slots' | 'folds'>): void {
    Object.assign(this.folds, folds);
    for (const [name, text] of Object.entries(slots) as [Slot, string][]) {
      const slot = this.root.querySelector<HTMLElement>(`[data-slot="${name}"]`)!;
      if (this.slots[name] !== text) {
        const open = new Set(foldsIn(slot, '[open]').map((fold) => fold.dataset.fold));
        slot.innerHTML = text;
        this.slots[name] = text;
        if (open.size > 0) for (const fold of foldsIn(slot)) fold.open = open.has(fold.dataset.fold);
      }
      for (const fold of foldsIn(slot, '[open]')) this.fill(fold);
    }
  }

  private fill(fold: HTMLDetailsElement): void {
    const slot = fold.closest<HTMLElement>('[data-slot]')!.dataset.slot as Slot;
    const text = this.folds[slot]?.[fold.dataset.fold!];
    if (text === undefined || this.filled.get(fold) === text) return;
    this.filled.set(fold, text);
    const summary = fold.firstElementChild!;
    while (summary.nextSibling) summary.nextSibling.remove();
    summary.insertAdjacentHTML('afterend', text);
  }
}

function foldsIn(slot: HTMLElement, open = ''): HTMLDetailsElement[] {
  return [...slot.querySelectorAll<HTMLDetailsElement>(`details[data-fold]${open}`)];
}
