/**
 * Astro's content entry, left empty on purpose: the household is read, checked and planned before the site is built
 * (src/content/read.ts), and the pages read only the finished plan. An empty list also keeps Astro from taking
 * src/content/, which is code, for collections of its own.
 */
export const collections = {};
