/** What is put away under its title: in full on the pages of the site; where the page plans itself, put in when it is opened. */
import { html, type Markup } from '../html.ts';

export interface Folded {
  summary: Markup | string;
  body: Markup;
  /** Not on paper even where it is open. */
  screenOnly?: boolean | undefined;
}

export type Fold = (folded: Folded) => Markup;

const box = ({ summary, screenOnly }: Folded, key: string | undefined, body: Markup | false): Markup =>
  html`<details${screenOnly && html` class="no-print"`}${key !== undefined && html` data-fold="${key}"`}><summary>${summary}</summary>${body}</details>`;

/** All there. */
export const unfolded: Fold = (folded) => box(folded, undefined, folded.body);

/**
 * Keeps what is folded beside the markup, by a key that stays the same while the numbers in it move.
 * @param bodies - markup of what is folded, filled as the parts are made
 */
export function foldedAway(bodies: Record<string, string>): Fold {
  return (folded) => {
    const title = String(folded.summary).replaceAll(/<[^>]*>|\d+/g, '');
    let key = title;
    for (let n = 2; key in bodies; n++) key = `${title} ${n}`;
    bodies[key] = folded.body.text;
    return box(folded, key, false);
  };
}
