/** The answers on this device. What cannot be read is put aside, never thrown away. */
import { type Drafts, draftsOf } from './drafts.ts';

const KEY = 'idle-season.answers';
const ASIDE = 'idle-season.answers.aside';

/** What was kept; undefined where there is nothing, or nothing that can be read. */
export function keptDrafts(): Drafts | undefined {
  try {
    const text = localStorage.getItem(KEY);
    if (text === null) return undefined;
    const drafts = parsed(text);
    const aside = localStorage.getItem(ASIDE) ?? '';
    if (!drafts && !aside.includes(text)) localStorage.setItem(ASIDE, aside === '' ? text : `${aside}\n${text}`);
    return drafts;
  } catch {
    return undefined;
  }
}

/** Answers of another form or damaged ones, as they were found. */
export function setAside(): string | undefined {
  try {
    return localStorage.getItem(ASIDE) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Lets go of what was put aside: the person has it as a file. */
export function forgetAside(): void {
  try {
    localStorage.removeItem(ASIDE);
  } catch {
    // Where nothing can be kept, nothing was put aside.
  }
}

/** Keeps the answers; false where the device does not let it. */
export function keep(drafts: Drafts): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify(drafts));
    return true;
  } catch {
    return false;
  }
}

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
