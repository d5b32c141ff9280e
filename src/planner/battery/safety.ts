import type { BatteryChemistry } from '../household.ts';

/** A rule that holds whenever a battery of these chemistries is charged. */
export interface SafetyRule {
  id: string;
  chemistries: readonly BatteryChemistry[];
  text: string;
  source: string;
}

const LEAD: readonly BatteryChemistry[] = ['flooded-antimony', 'flooded-calcium', 'agm', 'gel'];

/** What is said wherever a battery is charged. */
export const SAFETY_RULES: readonly SafetyRule[] = [
  {
    id: 'battery-frozen',
    chemistries: LEAD,
    text: 'Never charge a frozen battery: let it thaw at room temperature first, and look for a cracked case.',
    source: 'US Army Ordnance course OD1002, lesson 2',
  },
  {
    id: 'battery-lithium-cold',
    chemistries: ['lifepo4'],
    text: 'Never charge lithium iron phosphate below 0 °C: warm the battery itself first, and only use a charger made for it.',
    source: 'common practice',
  },
  {
    id: 'battery-hydrogen',
    chemistries: LEAD,
    text: 'Charging gives off hydrogen, 0.46 L for each ampere-hour and cell of overcharge: ventilate, no flame, no spark.',
    source: 'UFC 3-520-01 (10 Jun 2002), para 14-1.3.2.2',
  },
  {
    id: 'battery-acid',
    chemistries: LEAD,
    text: 'Acid: wear eye protection and gloves; have water at hand to rinse.',
    source: 'common practice',
  },
  {
    id: 'battery-petrol',
    chemistries: [...LEAD, 'lifepo4'],
    text: 'Never charge beside an open tank or a can that is being filled: petrol vapour is heavier than air and the charger can spark.',
    source: 'common practice',
  },
];

/** The rules that hold for a chemistry. */
export function safetyRules(chemistry: BatteryChemistry): SafetyRule[] {
  return SAFETY_RULES.filter((rule) => rule.chemistries.includes(chemistry));
}
