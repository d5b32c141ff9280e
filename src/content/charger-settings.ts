/** What the charger of a form charges. Apart from what writes files, which a page needs only when files are asked for. */
import type { HouseholdAnswers } from './write.ts';

/** Chemistries that any charger for a 12 V lead-acid battery is taken to have a setting for; common practice. */
const LEAD_SETTINGS = ['flooded', 'agm', 'gel'] as const;

/** What a charger of the answers has a setting for. */
export const chargerSettings = ({ lithium = false }: NonNullable<HouseholdAnswers['charger']>) =>
  lithium ? ([...LEAD_SETTINGS, 'lifepo4'] as const) : LEAD_SETTINGS;
