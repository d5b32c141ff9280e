/** Lists the machines whose pages are on the device. */
class KeptPages extends HTMLElement {
  async connectedCallback(): Promise<void> {
    if (!('caches' in window)) return;
    const names: Record<string, string> = JSON.parse(this.dataset.names ?? '{}');
    const kept = new Set<string>();
    for (const cache of await caches.keys())
      for (const { url } of await (await caches.open(cache)).keys()) kept.add(new URL(url).pathname);
    const { page = '' } = this.dataset;
    const items = Object.entries(names).flatMap(([id, name]) => {
      const path = page.replace('-', id);
      if (!kept.has(path)) return [];
      const item = document.createElement('li');
      item.append(Object.assign(document.createElement('a'), { href: path, textContent: name }));
      return [item];
    });
    this.hidden = items.length === 0;
    this.querySelector('ul')!.replaceChildren(...items);
  }
}

customElements.define('kept-pages', KeptPages);
