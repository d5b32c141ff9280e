/** How each figure of the coolant plan came about. */
import type { IsoDate, Machine } from '../household.ts';
import type { Derivation } from '../season-plan.ts';
import { glycolRow } from './glycols.ts';
import type { Swap } from './strength.ts';

export type Coolant = NonNullable<Machine['cooling']['coolant']>;

/** Below about a third by volume the rust inhibitors that come with the glycol are too thin. Common practice, from memory. */
export const LEAST_STRENGTH = 1 / 3;

/** Protection is wanted this much below the coldest to be reckoned with. */
export const MARGIN_K = 5;

/** What the cold is reckoned with: that of the store, and that of outdoors where only a heater keeps it out [°C]. */
export interface Cold {
  storeC: number;
  heaterFailsC?: number | undefined;
}

export const IN_STORE = 'coldest to be reckoned with in the store over the rest';

export function needDerivation({ storeC, heaterFailsC }: Cold, needC: number): Derivation {
  return {
    method: 'coolant.need',
    equation: 'needed freezing point = coldest to be reckoned with − margin',
    inputs: [
      { name: IN_STORE, value: storeC, unit: '°C' },
      ...(heaterFailsC === undefined
        ? []
        : [{ name: 'outdoors, where the heater fails', value: heaterFailsC, unit: '°C' }]),
      { name: 'margin', value: MARGIN_K, unit: 'K' },
    ],
    result: { value: needC, unit: '°C' },
    sources: ['the margin: common practice'],
    caveat:
      'Below first ice coolant is slush before it is solid: propylene glycol of 20–50 % bursts a pipe 7 to {15 K} colder only (secondary copies of ASHRAE). That reserve is not counted on, and slush must not be pumped.',
  };
}

/**
 * @param needed - strength that the cold asks for, volume fraction; undefined where no mixture reaches it
 * @param aimed - strength aimed at
 */
export function aimDerivation(needC: number, needed: number | undefined, aimed: number): Derivation {
  return {
    method: 'coolant.aim',
    equation:
      'strength aimed at = the larger of the strength that freezes at the needed point and a third; the strongest where none does',
    inputs: [
      { name: 'needed freezing point', value: needC, unit: '°C' },
      needed === undefined
        ? { name: 'strength that freezes there', value: 'none', unit: '' }
        : { name: 'strength that freezes there', value: needed * 100, unit: '% by volume' },
      { name: 'least that its inhibitors ask', value: LEAST_STRENGTH * 100, unit: '% by volume' },
    ],
    result: { value: aimed, unit: 'volume fraction' },
    sources: [
      'no less than a third of glycol, for the rust inhibitors that come with it: common practice, from memory',
    ],
    caveat: "Half and half is the usual mixture. The maker's handbook goes before this.",
  };
}

export function freezeDerivation(coolant: Coolant, freezeC: number): Derivation {
  return {
    method: 'coolant.freezing-point',
    equation: 'first ice read from the table by volume fraction, a monotone curve between its rows',
    inputs: [
      { name: 'glycol', value: coolant.glycol, unit: '' },
      { name: 'strength', value: coolant.strength! * 100, unit: '% by volume' },
    ],
    result: { value: freezeC, unit: '°C' },
    sources: [glycolRow(coolant.glycol).source],
    caveat:
      "Melinder's tables differ by up to {2.3 K} at the strong end. A refractometer reads to {1 K} (ASTM D3321), one with the wrong glycol's scale is wrong by {10 K} and more; a mixture of both glycols reads wrong on either. Stronger than the end of the table, up to 65 %, its last row is taken.",
  };
}

export function swapDerivation(coolant: Coolant, target: number, reach: number, swap: Swap | undefined): Derivation {
  return {
    method: 'coolant.replace',
    equation: 'x = V·(Ct − C0)/(Cc − C0); one draining reaches C0 + (Cc − C0)·Vd/V',
    inputs: [
      { name: 'coolant in the system, V', value: coolant.volumeL, unit: 'L' },
      { name: 'one draining lets out, Vd', value: coolant.drainableL, unit: 'L' },
      { name: 'strength now, C0', value: coolant.strength! * 100, unit: '%' },
      { name: 'strength aimed at, Ct', value: target * 100, unit: '%' },
      { name: 'strength of the refill, Cc', value: coolant.refillStrength * 100, unit: '%' },
      { name: 'one draining reaches', value: reach * 100, unit: '%' },
    ],
    result: swap ? { value: swap.totalL, unit: 'L' } : { value: 'not with this refill', unit: '' },
    sources: ['balance of glycol by volume'],
    caveat:
      'Volumes are added as they are; mixing shrinks them by about 1 %. What is drained goes to the collection point: glycol poisons animals.',
  };
}

export function testDerivation(firstFrost: IsoDate | undefined, designLowC: number, testBy: IsoDate): Derivation {
  return {
    method: 'coolant.test-by',
    equation:
      'the day before the store can first reach −1 °C, or the last day of use where it can be that cold by then',
    inputs: [
      {
        name: 'first day the store can reach −1 °C',
        value: firstFrost ?? 'not within the rest',
        unit: '',
      },
      { name: IN_STORE, value: designLowC, unit: '°C' },
    ],
    result: { value: testBy, unit: '' },
    sources: ['water freezes at 0 °C and cracks the block; one degree Celsius for the thermometer: common practice'],
  };
}

export function ageDerivations(coolant: Coolant | undefined, ageDue: IsoDate | undefined): Derivation[] {
  if (!coolant || !ageDue) return [];
  return [
    {
      method: 'coolant.age',
      equation: 'due = last changed + life',
      inputs: [
        { name: 'last changed', value: coolant.lastChanged!, unit: '' },
        { name: 'life', value: coolant.lifeYears, unit: 'years' },
      ],
      result: { value: ageDue, unit: '' },
      sources: ["life as given for the machine (the maker's handbook)"],
    },
  ];
}
