/** Makes the site work without network, and says when a newer one is ready. */
class UpdateNotice extends HTMLElement {
  connectedCallback(): void {
    if (!('serviceWorker' in navigator)) return;
    // After the page is there: what it needs comes first.
    addEventListener('load', () => void this.register(), { once: true });
  }

  private async register(): Promise<void> {
    try {
      const registration = await navigator.serviceWorker.register(this.dataset.worker!);
      void navigator.serviceWorker.ready.then(() => {
        document.querySelector<HTMLElement>('[data-kept]')!.hidden = false;
      });
      this.offer(registration.waiting);
      registration.addEventListener('updatefound', () => {
        const next = registration.installing;
        next?.addEventListener('statechange', () => {
          // Without a controller this is the first visit, and nothing older is shown.
          if (next.state === 'installed' && navigator.serviceWorker.controller) this.offer(next);
        });
      });
    } catch {
      // The page works as it is while there is a network.
    }
  }

  private offer(next: ServiceWorker | null): void {
    if (!next || !navigator.serviceWorker.controller) return;
    this.hidden = false;
    this.querySelector('button')!.onclick = () => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      next.postMessage('take');
    };
  }
}

customElements.define('update-notice', UpdateNotice);
