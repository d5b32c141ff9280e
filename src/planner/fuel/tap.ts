import type { Fuel, FuelChoice } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';

const COUNT_WORDS = ['no', 'the', 'both', 'all three', 'all four'];

/**
 * What to do with taps and float bowls, in order.
 * @param fuel - the fuel system
 * @param choice - fill, drain or leave
 * @param restDays - length of the rest; from SHORT_REST_DAYS on bowls are emptied even of treated fuel, which dries to gum in them first [d]
 * @returns sentences for the lay-up sheet
 * Source: common practice.
 */
export function tapText(fuel: Fuel, choice: FuelChoice, restDays: number): string {
  return [tapPart(fuel, choice), bowlPart(fuel, choice, restDays)].filter(Boolean).join(' ');
}

function tapPart(fuel: Fuel, choice: FuelChoice): string {
  if (!fuel.taps || fuel.taps.count < 1) return 'No fuel tap.';
  const { kind, count } = fuel.taps;
  if (kind === 'vacuum') {
    const taps = count === 1 ? 'Vacuum tap' : `${words(count)} vacuum taps`;
    const left = `${taps}: leave at ON or RES, never at PRIME (PRIME lets fuel through with the engine off); a tap that has OFF: OFF.`;
    return choice === 'drain' ? `To drain, set to PRIME only while the fuel runs out. ${left}` : left;
  }
  if (count === 1) return choice === 'drain' ? 'Manual tap: open to drain, then OFF.' : 'Manual tap: OFF.';
  const all = words(count);
  return choice === 'drain'
    ? `${count} manual taps: drain through ${all.toLowerCase()}, one side of the tank does not empty through the other; then ${all.toLowerCase()} OFF.`
    : `${count} manual taps: ${all.toLowerCase()} OFF; one left open feeds the bowls by itself.`;
}

function bowlPart(fuel: Fuel, choice: FuelChoice, restDays: number): string {
  if (fuel.delivery !== 'carburettor') {
    return {
      drain: 'Injection: pump, rail and injectors stay wet; do not run the pump dry.',
      fill: 'Injection: nothing to drain, pump and injectors stay wet with treated fuel.',
      leave: 'Injection: nothing to drain, pump and injectors stay wet.',
    }[choice];
  }
  if (fuel.bowls < 1) return choice === 'drain' ? 'Run the carburettor dry.' : '';
  const bowls = fuel.bowls === 1 ? 'the float bowl' : `${words(fuel.bowls).toLowerCase()} float bowls`;
  if (choice === 'drain') return `Drain ${bowls}.`;
  if (restDays < SHORT_REST_DAYS) return `A rest this short leaves ${bowls} full.`;
  // A vacuum tap shuts itself, and without a tap there is nothing to shut.
  const isShut = fuel.taps?.kind === 'manual' && fuel.taps.count > 0;
  return `After the last run, ${isShut ? 'shut off and ' : ''}drain ${bowls}.`;
}

function words(count: number): string {
  const word = COUNT_WORDS[count] ?? `all ${count}`;
  return word[0]!.toUpperCase() + word.slice(1);
}
