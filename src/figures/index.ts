/** The pictures of the site: plan data in, SVG text out; each with the table that says the same. */
export { type AirData, airPicture, airTable } from './air.ts';
export { type BatteryData, batteryPicture, batteryTable } from './battery.ts';
export { legendMark } from './mark.ts';
export { type StripData, stripPicture } from './strip.ts';
export type { Alternative, Table } from './svg.ts';
export type { FigureLanguage, FigureWords } from './words.ts';
export type { RingData, RingMachine } from './year.ts';
export { RING_MOST, yearRing, yearRingTable } from './year-ring.ts';
