/** The boxes of a sheet as boxes to tick. */
export class Ticks {
  private readonly boxes = new Map<string, HTMLInputElement>();

  constructor(ticked: (step: string, done: boolean) => void) {
    for (const box of document.querySelectorAll<HTMLInputElement>('input.box[data-step]')) {
      const step = box.dataset.step!;
      this.boxes.set(step, box);
      box.addEventListener('change', () => ticked(step, box.checked));
    }
  }

  /** The steps that the record calls done; what the build knows as done stays done. */
  show(done: ReadonlySet<string>): void {
    for (const [step, box] of this.boxes) box.checked = done.has(step) || box.defaultChecked;
  }
}
