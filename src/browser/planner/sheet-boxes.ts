/** The boxes of the two sheets on the planner page, to be ticked on the device. */
import { addBoxes } from '../bench/boxes.ts';
import { PLANNER } from './words.ts';

export class SheetBoxes {
  private readonly root: HTMLElement;
  /** The step that was ticked last: what the plan changes above it must not carry it away. */
  private last: string | undefined;

  /**
   * @param root - where the sheets are
   * @param ticked - told of a step and whether it is done; false where that cannot be so
   */
  constructor(root: HTMLElement, ticked: (step: string, done: boolean) => boolean) {
    this.root = root;
    root.addEventListener('change', ({ target }) => {
      const box = target as HTMLInputElement;
      if (!box.matches('input.box')) return;
      this.last = box.dataset.step;
      if (!ticked(box.dataset.step!, box.checked)) box.checked = !box.checked;
    });
  }

  /**
   * Puts other sheets in place, and boxes to tick on them; the step that was ticked last stays where it is on the screen.
   * @param put - changes what is shown
   */
  around(put: () => void): void {
    const top = this.box()?.getBoundingClientRect().top;
    const hadFocus = document.activeElement === this.box();
    put();
    addBoxes(this.root, PLANNER.tick);
    const box = this.box();
    this.last = undefined;
    if (!box || top === undefined) return;
    if (hadFocus) box.focus({ preventScroll: true });
    scrollBy({ top: box.getBoundingClientRect().top - top, behavior: 'instant' });
  }

  /** Titles of the steps on the sheets, by their names. */
  titles(): Map<string, string> {
    const rows = this.root.querySelectorAll<HTMLElement>('[data-step]:has(> .body)');
    return new Map([...rows].map((row) => [row.dataset.step!, row.querySelector('.title')?.textContent ?? '']));
  }

  /** On the sheet in sight: a coolant test that is late stands on both. */
  private box(): HTMLInputElement | null {
    if (this.last === undefined) return null;
    return this.root.querySelector(`[data-show]:not([hidden]) input.box[data-step="${CSS.escape(this.last)}"]`);
  }
}
