/** Signs that are no text: control characters, direction marks and odd separators, halves of pairs, what is no character. */
const SIGNS = String.raw`\p{Cc}|\p{Cs}|[\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]`;

/** What one line of text cannot hold. */
export const NO_TEXT = new RegExp(SIGNS, 'gu');

/** What no text of a file holds: tabs and new lines are signs of the file itself. */
export const FORBIDDEN = new RegExp(`(?![\\t\\n\\r])(?:${SIGNS})`, 'u');
