/** Diesel, of which nothing is planned: said in words, so that nobody has petrol's steps for it. */

/** What to do instead. */
export const NO_DIESEL =
  'Diesel engines are not planned: fuel, injection and glow plugs ask for other work than petrol’s. Lay the machine up by its manual, and leave its file out.';

/**
 * Whether a word means diesel fuel or an engine that burns it.
 * @param word - as found: "diesel", or a label of the pump, B7 to B100 and XTL
 * Source: EN 16942:2016, labels of fuels, from memory.
 */
export const isDiesel = (word: unknown): boolean =>
  /^(?:(?:turbo[ -]?)?diesel(?: (?:engine|fuel))?|derv|hvo|xtl|b(?:7|10|20|30|100))$/i.test(String(word).trim());
