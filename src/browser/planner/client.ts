/** The page's end of the worker: asks, and waits for the reply of the same number. */
import type { Ask, Asks, Reply, Request, Setting } from './messages.ts';

export class PlannerClient {
  private readonly setting: Setting;
  private readonly waiting = new Map<number, { resolve: (value: never) => void; reject: (why: Error) => void }>();
  private worker: Worker | undefined;
  private next = 0;

  constructor(setting: Setting) {
    this.setting = setting;
  }

  /** Asks the worker; it is started by the first question. */
  ask<A extends Ask>(ask: A, given: Asks[A][0]): Promise<Asks[A][1]> {
    this.worker ??= this.start();
    const id = this.next++;
    const request = { id, setting: this.setting, ask, with: given } as Request;
    return new Promise<Asks[A][1]>((resolve, reject) => {
      this.waiting.set(id, { resolve: resolve as (value: never) => void, reject });
      this.worker!.postMessage(request);
    });
  }

  private start(): Worker {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<Reply>) => {
      const one = this.waiting.get(data.id);
      this.waiting.delete(data.id);
      if (data.failed === undefined) one?.resolve(data.answer as never);
      else one?.reject(new Error(data.failed));
    };
    // A worker that cannot start answers nothing by itself.
    worker.onerror = (event) => {
      event.preventDefault();
      for (const one of this.waiting.values()) one.reject(new Error(event.message || 'the planner did not start'));
      this.waiting.clear();
      this.worker = undefined;
    };
    return worker;
  }
}
