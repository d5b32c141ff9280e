import type { Fuel } from '../household.ts';
import type { Derivation } from '../season-plan.ts';
import { DENSITY_RANGE, EXPANSION_EQUATION, EXPANSION_SOURCE, expansionPerK, expansionRatio } from './expansion.ts';

/** Share of the tank that is filled for the rest where the heat allows it. */
export const FILL_SHARE = 0.95;

/** Nobody draws off less [L]. */
const DROP_L = 0.005;

/** Down to how many litres the last rides use a tank that is left low [L]: two parts fresh then go on top. Common practice. */
export const lowTankL = ({ tankL }: Pick<Fuel, 'tankL'>): number => tankL / 3;

/** The petrol that a tank holds when the last rides have used it down. */
export function usedDown(fuel: Fuel): Fuel {
  const { value, low, high } = fuel.inTankL;
  const [v, l, h] = [value, low, high].map((litres) => Math.min(litres, lowTankL(fuel))) as [number, number, number];
  return { ...fuel, inTankL: { value: v, low: l, high: h } };
}

export interface FillAmounts {
  addL: number;
  /** Fuel in the tank during the rest, at the fill day's temperature [L]. */
  levelL: number;
  /** To be drawn off first, where the tank is fuller than the heat allows [L]. */
  drawOffL: number;
  fullAtHottestPct: number;
  derivations: Derivation[];
}

/**
 * Litres to add for a full tank that stays under its brim on the hottest day.
 * @param fuel - tank and what is in it
 * @param fillC - temperature of the fuel on the fill day [°C]
 * @param hottestC - highest temperature of the store over the rest [°C]
 * @param share - share of the tank to fill; 0 leaves what is in it
 * Source: ASTM D1250, table 54B; 95 % full: common practice.
 * Error: fuel from an underground tank is near 10–15 °C; colder than that on a warm day it swells by more than is reckoned.
 */
export function fillAmounts(fuel: Fuel, fillC: number, hottestC: number, share = FILL_SHARE): FillAmounts {
  const densityKgM3 = Math.min(DENSITY_RANGE.high - 1, Math.max(DENSITY_RANGE.low, fuel.densityKgM3));
  const ratio = expansionRatio(fillC, hottestC, densityKgM3);
  const inTankL = Math.min(fuel.tankL, fuel.inTankL.value);
  const brimL = fuel.tankL / ratio;
  const wantedL = Math.min(share * fuel.tankL, brimL);
  const levelL = Math.min(Math.max(inTankL, wantedL), brimL);
  const addL = Math.max(0, levelL - inTankL);
  const fullAtHottestPct = (100 * levelL * ratio) / fuel.tankL;
  const outside =
    densityKgM3 === fuel.densityKgM3 ? '' : ` The density given lies outside the table; ${densityKgM3} kg/m³ is taken.`;
  return {
    addL,
    levelL,
    drawOffL: inTankL - levelL > DROP_L ? inTankL - levelL : 0,
    fullAtHottestPct,
    derivations: [
      {
        method: 'fuel.add',
        equation: 'litres to add = min(share·tank, tank/swelling) − in tank, not under 0',
        inputs: [
          { name: 'tank', value: fuel.tankL, unit: 'L' },
          { name: 'in the tank on the last day of use', value: fuel.inTankL.value, unit: 'L' },
          { name: 'share that is filled', value: share * 100, unit: '%' },
          { name: 'swelling up to the hottest hour', value: ratio, unit: '' },
        ],
        result: { value: addL, unit: 'L' },
        sources: ['95 % full: common practice; motor petrol advice of an aviation body', EXPANSION_SOURCE],
        caveat:
          share > 0
            ? `By what is in the tank: between {${Math.max(0, levelL - fuel.inTankL.high).toFixed(1)} L} and {${Math.max(0, levelL - fuel.inTankL.low).toFixed(1)} L}. Fill to the level, not by the amount.`
            : 'The tank keeps what is in it: nothing is filled in.',
      },
      {
        method: 'fuel.expansion',
        equation: `full at hottest = level · VCF(fill)/VCF(hottest); ${EXPANSION_EQUATION}`,
        inputs: [
          { name: 'level after filling', value: levelL, unit: 'L' },
          { name: 'density at 15 °C, ρ', value: densityKgM3, unit: 'kg/m³' },
          { name: 'expansion coefficient α', value: expansionPerK(densityKgM3), unit: '1/K' },
          { name: 'fuel temperature on the fill day', value: fillC, unit: '°C' },
          { name: 'warmest hour of the years reckoned, in the store over the rest', value: hottestC, unit: '°C' },
        ],
        result: { value: fullAtHottestPct, unit: '%' },
        sources: [EXPANSION_SOURCE],
        caveat: `The standard's coefficient is a quarter larger than that of textbooks (0.00095 1/K), so on the safe side. The tank's own growth is left out. Fuel colder than the air of the fill day swells more. Below −18 °C the table is extrapolated.${outside}`,
      },
    ],
  };
}
