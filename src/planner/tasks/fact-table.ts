/**
 * Every fact of a machine that a procedure's `when:` can ask for, one row each.
 *
 * The table is what the content reader checks names and values against, what the field reference prints, and what the ledger
 * check enumerates. `machineFacts` gives exactly these; a test holds the two together.
 */
export interface FactRow {
  /** Path in `when:`, with dots. */
  path: string;
  /** The words it can be, or "yes or no". */
  values: readonly string[] | 'yes or no';
  meaning: string;
}

const YES_NO = 'yes or no';

export const FACTS: readonly FactRow[] = [
  {
    path: 'kind',
    values: ['motorcycle', 'scooter', 'snow-machine', 'quad', 'side-by-side', 'car', 'tractor', 'mower'],
    meaning: 'Kind of machine.',
  },
  { path: 'use', values: ['road', 'snow', 'trail', 'work'], meaning: 'Where it is used.' },
  {
    path: 'rest',
    values: ['short', 'season', 'long'],
    meaning: 'Length of the rest: short under 28 days, long over a year, season between.',
  },
  {
    path: 'swap',
    values: YES_NO,
    meaning: 'Another machine starts up within three weeks of the last use of this one.',
  },
  { path: 'engine.cycle', values: ['four-stroke', 'two-stroke', 'electric'], meaning: 'Working cycle.' },
  { path: 'engine.electricStart', values: YES_NO, meaning: 'Has an electric starter.' },
  { path: 'engine.handStart', values: YES_NO, meaning: 'Has a kick or pull starter.' },
  { path: 'engine.oil', values: YES_NO, meaning: 'Has engine oil that is drained and filled.' },
  { path: 'engine.oilFilter', values: YES_NO, meaning: 'Has an engine oil filter.' },
  {
    path: 'engine.oilChange',
    values: ['advised', 'fresh', 'none'],
    meaning: 'Fresh where the record has an oil change in the 60 days before the last use.',
  },
  { path: 'engine.twoStrokeOil', values: ['premix', 'injected', 'none'], meaning: 'How two-stroke oil is given.' },
  { path: 'fuel.present', values: YES_NO, meaning: 'Has a petrol tank.' },
  { path: 'fuel.delivery', values: ['carburettor', 'injection', 'none'], meaning: 'How petrol gets to the engine.' },
  {
    path: 'fuel.choice',
    values: ['fill', 'drain', 'leave', 'none'],
    meaning: 'What the plan does with the petrol over the rest.',
  },
  {
    path: 'fuel.room',
    values: ['add', 'full', 'over', 'none'],
    meaning: 'Of a tank that rests full: petrol is added, it is full already, or too full for the warmth of the store.',
  },
  { path: 'fuel.tap', values: ['vacuum', 'manual', 'none'], meaning: 'Kind of fuel tap.' },
  { path: 'fuel.twoTaps', values: YES_NO, meaning: 'More than one fuel tap on the tank.' },
  { path: 'fuel.bowls', values: YES_NO, meaning: 'Has float bowls.' },
  { path: 'fuel.premix', values: YES_NO, meaning: 'Oil is mixed into the petrol.' },
  { path: 'fuel.tank', values: ['steel', 'plastic', 'aluminium', 'none'], meaning: 'Material of the tank.' },
  { path: 'fuel.lined', values: YES_NO, meaning: 'The tank is lined or coated inside.' },
  { path: 'fuel.stabiliser', values: YES_NO, meaning: 'The plan has a stabiliser dose for this machine.' },
  {
    path: 'fuel.spring',
    values: ['use', 'mix', 'dispose', 'none'],
    meaning: 'Verdict on the petrol in the tank at first use.',
  },
  { path: 'fuel.drainedOld', values: YES_NO, meaning: 'What is drained is too old already to be used up.' },
  { path: 'battery.present', values: YES_NO, meaning: 'Has a 12 V battery.' },
  { path: 'battery.care', values: ['maintainer', 'carry-in', 'visits', 'none'], meaning: 'How it is kept charged.' },
  {
    path: 'battery.chemistry',
    values: ['flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4', 'none'],
    meaning: 'Chemistry of the battery.',
  },
  {
    path: 'battery.family',
    values: ['flooded', 'sealed', 'lithium', 'none'],
    meaning: 'Flooded (has acid to look at), sealed lead-acid, or lithium.',
  },
  { path: 'battery.connected', values: YES_NO, meaning: 'Stays connected to the machine over the rest.' },
  { path: 'battery.keptAt', values: ['machine', 'room', 'none'], meaning: 'Where it spends the rest.' },
  { path: 'battery.removable', values: YES_NO, meaning: 'Can be taken out.' },
  {
    path: 'battery.awayToCharge',
    values: YES_NO,
    meaning: 'Rests in the machine at a place without electricity, and comes out to be charged.',
  },
  {
    path: 'battery.outOfReach',
    values: YES_NO,
    meaning: 'Does not come out, and rests at a place without electricity: nothing can charge it there.',
  },
  { path: 'battery.charges', values: YES_NO, meaning: 'At least one charge falls into the rest.' },
  { path: 'driveBattery.present', values: YES_NO, meaning: 'An electric machine with a battery that drives it.' },
  {
    path: 'driveBattery.chemistry',
    values: ['lithium-ion', 'lead-acid', 'none'],
    meaning: 'Chemistry of the drive battery.',
  },
  { path: 'driveBattery.removable', values: YES_NO, meaning: 'The drive battery comes out without a workshop.' },
  {
    path: 'driveBattery.outOfReach',
    values: YES_NO,
    meaning: 'Does not come out, and rests at a place without electricity: nothing can charge it there.',
  },
  { path: 'cooling.kind', values: ['air', 'oil', 'liquid', 'none'], meaning: 'How the engine is cooled.' },
  { path: 'coolant.present', values: YES_NO, meaning: 'Has coolant.' },
  { path: 'coolant.known', values: YES_NO, meaning: 'Its strength is known.' },
  {
    path: 'coolant.enough',
    values: ['yes', 'no', 'unknown', 'none'],
    meaning: 'Protects down to what the store needs.',
  },
  { path: 'coolant.swap', values: YES_NO, meaning: 'Some of it must be drained and replaced.' },
  { path: 'coolant.old', values: YES_NO, meaning: 'Past its age before the first use.' },
  {
    path: 'chassis.drive',
    values: ['chain', 'belt', 'shaft', 'variator', 'track', 'gearbox', 'hub'],
    meaning: 'Final drive.',
  },
  { path: 'chassis.brakes', values: ['hydraulic', 'cable', 'mixed', 'none'], meaning: 'Brakes.' },
  {
    path: 'chassis.brakeFluid',
    values: ['DOT3', 'DOT4', 'DOT5', 'DOT5.1', 'mineral', 'none'],
    meaning: 'Brake fluid; "none" where it is not known or there is none.',
  },
  { path: 'chassis.clutch', values: ['cable', 'hydraulic', 'automatic', 'none'], meaning: 'Clutch.' },
  { path: 'chassis.throttle', values: ['cable', 'wire'], meaning: 'Throttle.' },
  { path: 'chassis.offGround', values: YES_NO, meaning: 'Rests with its weight off tyres or track.' },
  { path: 'chassis.skis', values: YES_NO, meaning: 'Has skis.' },
  { path: 'chassis.track', values: YES_NO, meaning: 'Has a track.' },
  { path: 'chassis.greasePoints', values: YES_NO, meaning: 'Has grease nipples.' },
  { path: 'chassis.centreStand', values: YES_NO, meaning: 'Has a centre stand.' },
  { path: 'chassis.airbox', values: YES_NO, meaning: 'Has an airbox with an intake that can be closed.' },
  { path: 'chassis.exhaust', values: YES_NO, meaning: 'Has an exhaust outlet that can be closed.' },
  { path: 'chassis.lights', values: YES_NO, meaning: 'Has lights.' },
  { path: 'tyres.present', values: YES_NO, meaning: 'Has tyres.' },
  { path: 'tyres.raised', values: YES_NO, meaning: 'The lay-up pressure is above the normal one.' },
  { path: 'roadSalt.exposed', values: YES_NO, meaning: 'Used on salted roads.' },
  { path: 'roadSalt.washed', values: YES_NO, meaning: 'Salt is washed off before the rest.' },
  { path: 'place.power', values: YES_NO, meaning: 'The place has electricity.' },
  { path: 'place.rodents', values: YES_NO, meaning: 'Mice or rats get in.' },
  { path: 'place.bench', values: YES_NO, meaning: 'Work can be done there.' },
  { path: 'place.open', values: YES_NO, meaning: 'Open or carport: wind and rain reach the machine.' },
  { path: 'household.batteryRoom', values: YES_NO, meaning: 'There is a warm room for batteries.' },
  { path: 'household.stand', values: YES_NO, meaning: 'There is a stand for this kind of machine.' },
  { path: 'corrosion.film', values: YES_NO, meaning: 'A protective film on bare metal is advised.' },
  { path: 'corrosion.fog', values: YES_NO, meaning: 'Fogged cylinders are advised.' },
  { path: 'corrosion.bag', values: YES_NO, meaning: 'A closed bag with desiccant is advised.' },
  { path: 'corrosion.dry', values: YES_NO, meaning: 'A dehumidified space is advised.' },
  { path: 'services.due', values: YES_NO, meaning: 'At least one service item is pulled into this lay-up.' },
  { path: 'paperwork.insurance', values: YES_NO, meaning: 'An insurance date is written down.' },
  { path: 'paperwork.registration', values: YES_NO, meaning: 'A registration date is written down.' },
  { path: 'paperwork.inspection', values: YES_NO, meaning: 'An inspection date is written down.' },
  { path: 'paperwork.paused', values: YES_NO, meaning: 'Some paper is suspended over the rest.' },
];

/** Every path of the table. */
export const FACT_NAMES: readonly string[] = FACTS.map((row) => row.path);

/**
 * What else holds where a fact is anything but "none" or no: a fuel tap has a tank, two taps are taps of some kind.
 * @param path - of the fact
 * @returns paths with the values they can then have
 */
export function implied(path: string): readonly (readonly [string, readonly (string | boolean)[]])[] {
  const present = `${path.split('.')[0]}.present`;
  const owner = path !== present && FACT_NAMES.includes(present) ? [[present, [true]] as const] : [];
  return path === 'fuel.twoTaps' ? [...owner, ['fuel.tap', ['vacuum', 'manual']]] : owner;
}
