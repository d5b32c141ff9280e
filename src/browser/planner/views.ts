/** The plan, or one of its two sheets, in sight and in print; the sheet's name stands in the margins of the paper. */
import type { View } from './show.ts';

type Margins = { 'lay-up': string; 'start-up': string };

export class SheetView {
  private readonly root: HTMLElement;
  private readonly style = new CSSStyleSheet();
  private view: View = 'plan';
  private texts: Margins = { 'lay-up': '', 'start-up': '' };

  constructor(root: HTMLElement) {
    this.root = root;
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, this.style];
    for (const button of root.querySelectorAll<HTMLElement>('[data-view]'))
      button.addEventListener('click', () => this.show(button.dataset.view as View));
    root.querySelector('[data-print]')!.addEventListener('click', () => window.print());
  }

  /** The style texts of both sheets' margins. */
  margins(texts: Margins): void {
    this.texts = texts;
    this.apply();
  }

  get inSight(): View {
    return this.view;
  }

  private show(view: View): void {
    this.view = view;
    for (const button of this.root.querySelectorAll<HTMLElement>('[data-view]'))
      button.ariaPressed = String(button.dataset.view === view);
    for (const part of this.root.querySelectorAll<HTMLElement>('[data-show]')) part.hidden = part.dataset.show !== view;
    this.root.querySelector<HTMLElement>('[data-print]')!.hidden = view === 'plan';
    this.apply();
  }

  private apply(): void {
    this.style.replaceSync(this.view === 'plan' ? '' : this.texts[this.view]);
  }
}
