/** The planner beside the page: one request at a time, one reply for each. */
import { Desk } from './desk.ts';
import type { Reply, Request } from './messages.ts';

let desk: Desk | undefined;

async function fetchJson(path: string): Promise<unknown> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: found status ${response.status}, expected the file`);
  return response.json();
}

self.onmessage = async ({ data }: MessageEvent<Request>) => {
  desk ??= new Desk(data.setting, fetchJson);
  const reply: Reply = { id: data.id };
  try {
    const answer = desk[data.ask] as (given: unknown) => unknown;
    reply.answer = await answer.call(desk, data.with);
  } catch (error) {
    reply.failed = error instanceof Error ? error.message : String(error);
  }
  self.postMessage(reply);
};
