/** Lists the machines whose next charge this device knows better than the page. */
import { nextOnDevice } from './moved.ts';

class MovedNote extends HTMLElement {
  connectedCallback(): void {
    const { next = '{}', page = '', by = '', none = '' } = this.dataset;
    const built: Record<string, string> = JSON.parse(next);
    const moved = Object.entries(nextOnDevice()).filter(([id, { date }]) => (built[id] ?? '') !== date);
    this.hidden = moved.length === 0;
    this.querySelector('ul')!.replaceChildren(
      ...moved.map(([id, { name, said }]) => {
        const item = document.createElement('li');
        const link = Object.assign(document.createElement('a'), { href: page.replace('-', id), textContent: name });
        item.append(link, `: ${said === '' ? none : by.replace('-', said)}`);
        return item;
      }),
    );
  }
}

customElements.define('moved-note', MovedNote);
