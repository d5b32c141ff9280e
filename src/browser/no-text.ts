/** What a content file would not take: control characters, direction marks, what is no character. */
export const NO_TEXT = /\p{Cc}|\p{Cs}|[\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/gu;
