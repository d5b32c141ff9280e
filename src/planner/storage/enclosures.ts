import type { EnclosureRow } from './types.ts';

const HEAT_BALANCE =
  'first-order heat balance: heat capacity of shell and slab over the loss of shell and air change (orders of magnitude)';

/**
 * The table of enclosures. Time constants: the heat balances of a thin steel shed (0.1 h and up), a timber or metal
 * garage on a slab (6.8 h), a masonry double garage (17.5 h) and an insulated masonry garage (73.5 h). Air changes and
 * the share of the house are common practice unless a row says otherwise.
 */
export const ENCLOSURES: readonly EnclosureRow[] = [
  {
    id: 'open',
    description: 'Outdoors or under a cover',
    timeConstantH: 0,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 20,
    timeConstantRangeH: { low: 0, high: 0.25 },
    airChangesRangePerH: { low: 5, high: 100 },
    houseCouplingRange: { low: 0, high: 0 },
    source: 'outdoor air, no building between; common practice',
  },
  {
    id: 'carport',
    description: 'Roof without walls',
    timeConstantH: 0,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 20,
    timeConstantRangeH: { low: 0, high: 0.25 },
    airChangesRangePerH: { low: 5, high: 100 },
    houseCouplingRange: { low: 0, high: 0.05 },
    source: 'outdoor air, no walls between; common practice',
  },
  {
    id: 'thin-metal-shed',
    description: 'Sheet-metal shed without a slab',
    timeConstantH: 0.3,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 1,
    timeConstantRangeH: { low: 0.1, high: 0.5 },
    airChangesRangePerH: { low: 0.5, high: 4 },
    houseCouplingRange: { low: 0, high: 0 },
    source: `${HEAT_BALANCE}; steel shed 3 × 2 × 2.1 m: 0.1 h empty, more with what stands in it`,
  },
  {
    id: 'timber-shed',
    description: 'Timber shed with a wooden floor',
    timeConstantH: 1,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 1,
    timeConstantRangeH: { low: 0.5, high: 3 },
    airChangesRangePerH: { low: 0.5, high: 3 },
    houseCouplingRange: { low: 0, high: 0 },
    source: 'between the steel shed and the garage on a slab; common practice',
  },
  {
    id: 'slab-garage',
    description: 'Single timber or metal garage on a concrete slab',
    timeConstantH: 7,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 1,
    timeConstantRangeH: { low: 3, high: 10 },
    airChangesRangePerH: { low: 0.5, high: 2 },
    houseCouplingRange: { low: 0, high: 0.1 },
    source: `${HEAT_BALANCE}; 6 × 3 × 2.4 m, U 2.5 W/(m²·K), 1.5 air changes: 6.8 h`,
  },
  {
    id: 'masonry',
    description: 'Detached masonry garage or barn on a slab',
    timeConstantH: 17,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 1,
    timeConstantRangeH: { low: 10, high: 30 },
    airChangesRangePerH: { low: 0.5, high: 2 },
    houseCouplingRange: { low: 0, high: 0.1 },
    source: `${HEAT_BALANCE}; 6 × 6 × 2.5 m, U 2.1 W/(m²·K), 1 air change: 17.5 h`,
  },
  {
    id: 'insulated',
    description: 'Detached insulated garage, not heated',
    timeConstantH: 48,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 0.5,
    timeConstantRangeH: { low: 30, high: 90 },
    airChangesRangePerH: { low: 0.2, high: 1 },
    houseCouplingRange: { low: 0, high: 0.1 },
    source: `${HEAT_BALANCE}; U 0.3–0.5 W/(m²·K), 0.5 air changes: 73.5 h with all of the slab counted`,
  },
  {
    id: 'attached-garage',
    description: 'Garage sharing a wall with the heated house',
    timeConstantH: 17,
    houseCoupling: 0.3,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 1,
    timeConstantRangeH: { low: 7, high: 48 },
    airChangesRangePerH: { low: 0.3, high: 2 },
    houseCouplingRange: { low: 0.1, high: 0.5 },
    source: 'time constant of the masonry garage; share of the house: common practice',
  },
  {
    id: 'cellar',
    description: 'Cellar or basement with an outer door, under a heated house',
    timeConstantH: 72,
    houseCoupling: 0.5,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 0.5,
    timeConstantRangeH: { low: 48, high: 200 },
    airChangesRangePerH: { low: 0.2, high: 1 },
    houseCouplingRange: { low: 0.2, high: 0.5 },
    source:
      'reduction factor b = 0.5–0.8 for a cellar (Flemish energy performance rules); time constant: common practice',
  },
  {
    id: 'heated',
    description: 'Workshop or garage held above freezing',
    timeConstantH: 17,
    houseCoupling: 0.1,
    houseC: 18,
    gainK: 0,
    setpointC: 8,
    airChangesPerH: 0.5,
    timeConstantRangeH: { low: 7, high: 90 },
    airChangesRangePerH: { low: 0.2, high: 1 },
    houseCouplingRange: { low: 0, high: 0.3 },
    source: 'set point of a frost guard, 5–10 °C; common practice',
  },
  {
    id: 'dehumidified',
    description: 'Closed masonry room held at 50 % relative humidity',
    timeConstantH: 17,
    houseCoupling: 0,
    houseC: 18,
    gainK: 0,
    airChangesPerH: 0.3,
    maxRhPct: 50,
    timeConstantRangeH: { low: 10, high: 48 },
    airChangesRangePerH: { low: 0.1, high: 0.5 },
    houseCouplingRange: { low: 0, high: 0.3 },
    source:
      'controlled-humidity storage at 50 % at most: US Army TM 38-260, par. 5-6; time constant of the masonry garage',
  },
];

/**
 * The row of an enclosure.
 * @param id - id in the table
 * @returns the row
 */
export function enclosureById(id: string): EnclosureRow {
  const row = ENCLOSURES.find((e) => e.id === id);
  if (!row) {
    throw new RangeError(
      `enclosure: "${id}" is not in the table; expected one of ${ENCLOSURES.map((e) => e.id).join(', ')}`,
    );
  }
  return row;
}
