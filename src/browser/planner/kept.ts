/** The answers on this device. What cannot be read is put aside, never thrown away. */
import { forget, store, stored } from '../stored.ts';
import { type Drafts, draftsOf } from './drafts.ts';

const KEY = 'idle-season.answers';
const ASIDE = 'idle-season.answers.aside';

/** What was kept; undefined where there is nothing, or nothing that can be read. */
export function keptDrafts(): Drafts | undefined {
  const text = stored(KEY);
  if (text === undefined) return undefined;
  const drafts = parsed(text);
  const aside = setAside();
  if (!drafts && !aside?.includes(text)) store(ASIDE, aside === undefined ? text : `${aside}\n${text}`);
  return drafts;
}

/** Answers of another form or damaged ones, as they were found. */
export const setAside = (): string | undefined => stored(ASIDE);

/** Lets go of what was put aside: the person has it as a file. */
export const forgetAside = (): void => forget(ASIDE);

/** Keeps the answers; false where the device does not let it. */
export const keep = (drafts: Drafts): boolean => store(KEY, JSON.stringify(drafts));

/** Told when another tab has kept answers. */
export function onKept(changed: () => void): void {
  window.addEventListener('storage', ({ key, newValue }) => {
    if (key === KEY && newValue !== null) changed();
  });
}

function parsed(text: string): Drafts | undefined {
  try {
    return draftsOf(JSON.parse(text));
  } catch {
    return undefined;
  }
}
