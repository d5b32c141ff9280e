import type { MachineKind } from '../household.ts';
import type { CorrosionPlan, Derivation } from '../season-plan.ts';
import { BAGS, din55474Units, FILMS, milStd2073BarrierUnits } from './desiccant.ts';

/** Board and blankets under and around a machine in its bag [kg], and the water that they give off [g/kg]. */
const DUNNAGE = { kg: 2, gPerKg: 80, source: 'wood at 18 % moisture, board and upholstery: 80 g/kg (DIN 55474)' };

/** Humidity that is kept in the bag [%]. */
const TARGET_RH_PCT = 40;

const VAPOUR_GAS_CONSTANT = 461.524;

/**
 * Units of desiccant for a bag around a machine, by both standards.
 * @param kind - kind of machine, for the size of the bag
 * @param days - length of the rest [d]
 * @param air - air that is closed in
 * Source: DIN 55474; MIL-STD-2073, method 50.
 */
export function desiccantFor(
  kind: MachineKind,
  days: number,
  air: { temperatureC: number; rhPct: number; vapourPa: number },
): { desiccant: NonNullable<CorrosionPlan['desiccant']>; derivations: Derivation[] } {
  const bag = BAGS.find((b) => b.kind === kind);
  if (!bag)
    throw new RangeError(`machine kind: found "${kind}", expected one of ${BAGS.map((b) => b.kind).join(', ')}`);
  const vapourGM3 = (1000 * air.vapourPa) / (VAPOUR_GAS_CONSTANT * (air.temperatureC + 273.15));
  const byFilm = FILMS.map((film) => ({
    film,
    units: din55474Units({
      volumeM3: bag.volumeM3,
      vapourGM3,
      dunnageKg: DUNNAGE.kg,
      dunnageGPerKg: DUNNAGE.gPerKg,
      areaM2: bag.areaM2,
      filmGM2D: film.vapourGM2D,
      days,
      rhPct: TARGET_RH_PCT,
    }),
  }));
  const [plain, barrier] = [byFilm[0]!, byFilm[1]!];
  const mil = milStd2073BarrierUnits(bag.areaM2, { wood: DUNNAGE.kg });
  const shared = [
    { name: 'surface of the bag, A', value: bag.areaM2, unit: 'm²' },
    { name: 'board and blankets inside', value: DUNNAGE.kg, unit: 'kg' },
  ];
  return {
    desiccant: {
      areaM2: bag.areaM2,
      volumeM3: bag.volumeM3,
      din55474Units: Math.ceil(plain.units),
      milStd2073Units: Math.ceil(mil),
      note: `DIN 55474 for ${plain.film.name} over ${days} days at ${TARGET_RH_PCT} %; in ${barrier.film.name} ${Math.ceil(barrier.units)} units do. The two disagree because MIL-STD-2073 counts surface alone, neither film nor time. One unit takes up 6 g of water at ${TARGET_RH_PCT} %.`,
    },
    derivations: [
      {
        method: 'corrosion.desiccant-din',
        equation: 'n = (V·b + m·c + A·e·W·t)/a',
        inputs: [
          { name: 'film', value: plain.film.name, unit: '' },
          { name: 'room in the bag, V', value: bag.volumeM3, unit: 'm³' },
          { name: 'vapour closed in, b', value: vapourGM3, unit: 'g/m³' },
          ...shared,
          { name: 'water given off, c', value: DUNNAGE.gPerKg, unit: 'g/kg' },
          { name: 'share of the drive at 40 %, e', value: 0.7, unit: '' },
          { name: 'film, W', value: plain.film.vapourGM2D, unit: 'g/(m²·d)' },
          { name: 'time, t', value: days, unit: 'd' },
          { name: 'taken up by a unit at 40 %, a', value: 6, unit: 'g' },
        ],
        result: { value: Math.ceil(plain.units), unit: 'units' },
        sources: ['DIN 55474; unit of DIN 55473', plain.film.source, DUNNAGE.source],
        caveat: `The film is reckoned at 20 °C and 85 %; a cold store lets through a quarter of it, a hot one five times as much. In ${barrier.film.name} (${barrier.film.vapourGM2D} g/(m²·d)) ${Math.ceil(barrier.units)} units do. The size of the bag is common practice: measure yours.`,
      },
      {
        method: 'corrosion.desiccant-mil',
        equation: 'U = C·A + X·D, C = 17 a square metre (1.6 a square foot), X = 8 a pound',
        inputs: shared,
        result: { value: Math.ceil(mil), unit: 'units' },
        sources: ['MIL-STD-2073, method 50, formula I'],
        caveat:
          'Knows neither film nor time; meant for a barrier of its own specification. Units of MIL-D-3464 take up 6 g at 40 %, as those of DIN 55473.',
      },
    ],
  };
}
