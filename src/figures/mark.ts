/** The signs of a legend, drawn with the classes of the pictures that they explain. */
const MARKS: Record<string, string> = {
  rest: '<rect x="1" y="1" width="24" height="12" class="f-rest"/>',
  work: '<rect x="2" y="2" width="22" height="10" class="f-work"/>',
  use: '<line x1="0" x2="26" y1="7" y2="7" class="f-use"/>',
  'lay-up': '<rect x="8" y="2" width="10" height="10" class="f-mark"/>',
  'first-use': '<circle cx="13" cy="7" r="5" class="f-mark-open"/>',
  temperature: '<path d="M0 10C8 10 8 3 14 3S20 8 26 8" class="f-temperature" fill="none"/>',
  dew: '<line x1="0" x2="26" y1="7" y2="7" class="f-dew"/>',
  freezing: '<line x1="0" x2="26" y1="7" y2="7" class="f-freezing"/>',
  today: '<g class="f-hand"><line x1="13" x2="13" y1="3" y2="14"/><path d="M9 -2H17L13 5Z"/></g>',
  band: '<rect x="0" y="1" width="26" height="12" class="f-band"/>',
  expected: '<line x1="0" x2="26" y1="7" y2="7" class="f-expected"/>',
  threshold: '<line x1="0" x2="26" y1="7" y2="7" class="f-threshold"/>',
  charge: '<g class="f-charge"><line x1="13" x2="13" y1="0" y2="14"/><path d="M13 0l5 9h-10z"/></g>',
  reading: '<g class="f-reading"><line x1="13" x2="13" y1="0" y2="14"/><circle cx="13" cy="7" r="4"/></g>',
  margin: '<rect x="0" y="1" width="26" height="12" class="f-margin"/>',
  cold: '<line x1="0" x2="26" y1="7" y2="7" class="f-cold"/>',
  freezes: '<line x1="0" x2="26" y1="7" y2="7" class="f-freezes"/>',
  wet: '<rect x="7" y="1" width="12" height="12" class="f-wet"/>',
  frost: '<rect x="7" y="1" width="12" height="12" class="f-frost"/>',
  condensation: '<rect x="7" y="1" width="12" height="12" class="f-condensation"/>',
};

/**
 * One sign as SVG text.
 * @param name - "rest", "charge", …; one that is not known draws nothing
 */
export const legendMark = (name: string): string =>
  `<svg viewBox="0 0 26 14" aria-hidden="true" focusable="false">${MARKS[name] ?? ''}</svg>`;
