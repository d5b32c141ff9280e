/**
 * The words of the site, a module and not an object, so that a script carries only those that it says. Another language is
 * another module of the same names.
 */
export * as WORDS from './words/english.ts';
