/** Words that people write for what the content calls otherwise. */

/** Each word in small letters, with what is meant; it counts where that is among the words that would have been right. */
const MEANT: Readonly<Record<string, readonly string[]>> = {
  snowmobile: ['snow-machine'],
  sled: ['snow-machine'],
  snowmachine: ['snow-machine'],
  atv: ['quad'],
  'four-wheeler': ['quad'],
  utv: ['side-by-side'],
  bike: ['motorcycle'],
  moped: ['scooter'],
  van: ['car'],
  pickup: ['car'],
  lawnmower: ['mower'],
  'lead-acid': ['flooded'],
  wet: ['flooded', 'lead-acid'],
  flooded: ['lead-acid'],
  agm: ['lead-acid'],
  gel: ['lead-acid'],
  sla: ['agm', 'lead-acid'],
  vrla: ['agm', 'lead-acid'],
  'li-ion': ['lifepo4', 'lithium-ion'],
  lithium: ['lifepo4', 'lithium-ion'],
  lifepo4: ['lithium-ion'],
  lfp: ['lifepo4', 'lithium-ion'],
  nmc: ['lithium-ion'],
  traction: ['driveBattery'],
  water: ['liquid'],
  coolant: ['liquid', 'cooling'],
  petrol: ['fuel'],
  gasoline: ['fuel'],
  alloy: ['aluminium'],
  metal: ['steel'],
  carb: ['carburettor'],
  efi: ['injection'],
  si: ['metric'],
  uk: ['imperial'],
  '12': ['12h'],
  '24': ['24h'],
  '2-stroke': ['two-stroke'],
  '4-stroke': ['four-stroke'],
  kickstart: ['kick'],
  kickstarter: ['kick'],
  'by-wire': ['wire'],
  trickle: ['maintainer'],
  outside: ['open'],
  outdoors: ['open'],
  basement: ['cellar'],
  cvt: ['variator'],
  petcock: ['tap'],
  mileage: ['odometer', 'distance'],
  km: ['odometer', 'distance'],
  miles: ['odometer', 'distance'],
  distance: ['odometer'],
  hours: ['engineHours'],
  months: ['time'],
  years: ['time'],
  day: ['date'],
  volts: ['voltage'],
  gas: ['fuel'],
  wheels: ['tyres'],
  repairs: ['jobs'],
  tasks: ['jobs'],
  type: ['kind'],
  title: ['name'],
  location: ['place'],
  garage: ['place'],
};

/**
 * The known word that another word for the same thing means.
 * @param word - as found; "10", "10 %" and "e 10" are blends
 * @param known - the words that would have been right
 */
export function alsoCalled(word: string, known: readonly string[]): string | undefined {
  const lower = word
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  const blend = /^e?\s?(\d{1,2})\s?%?$/i.exec(word.trim())?.[1];
  const meant = [...(Object.hasOwn(MEANT, lower) ? MEANT[lower]! : []), ...(blend === undefined ? [] : [`E${blend}`])];
  return meant.find((one) => known.includes(one));
}
