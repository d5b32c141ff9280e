/** What was said of a machine, in words; and temperatures as a person reads them. */
import type { Said } from './entries.ts';
import { SAID } from './said-words.ts';

/**
 * One entry in words.
 * @param said - what was done or measured
 * @param us - whether temperatures are read in °F
 * @param titles - of steps, by their names
 */
export function saidText(said: Said, us: boolean, titles: ReadonlyMap<string, string> = new Map()): string {
  const title = (step: string) => titles.get(step) ?? SAID.wholePhases[step] ?? step;
  switch (said.kind) {
    case 'readings':
      return `${said.date}: ${said.volts} V, ${degrees(said.temperatureC, us)}, ${SAID.restedFor(round(said.restedH))}`;
    case 'charged':
      return `${said.date}: ${said.toPct} %`;
    case 'done':
      return `${said.date}: ${title(said.step)}`;
    case 'skipped':
      return `${said.date}: ${title(said.step)}${said.why === undefined ? '' : ` (${said.why})`}`;
    case 'notes':
      return `${said.date}: ${said.text}`;
    case 'asLeft':
      return [said.item, said.where, said.since].filter(Boolean).join(', ');
    case 'finishedJobs':
      return said.job;
    case 'odometer':
      return `${round(said.km)} km`;
    case 'engineHours':
      return `${round(said.h)} h`;
  }
}

const round = (value: number) => Math.round(value * 10) / 10;

const degrees = (c: number, us: boolean) =>
  us ? `${Math.round(c * 1.8 + 32)} °F` : `${round(c)} °C`.replace('-', '−');

/**
 * A temperature that was read in the household's own degrees.
 * @param read - as read [°C, or °F]
 * @param us - whether in °F
 * @returns [°C]
 */
export const celsius = (read: number, us: boolean): number => (us ? round((read - 32) / 1.8) : read);
