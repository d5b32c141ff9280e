import type { When } from '../household.ts';

/** What can hurt, one row each: shown in full once on a sheet, by its title with every step that names it. */
export interface Caution {
  id: string;
  /** A few words for the margin. */
  title: string;
  text: string;
  /** Who knows better than this project. */
  defer: string;
  /** Machines that it does not concern, by any of these; one of which nothing is known is told. */
  unless?: When | readonly When[] | undefined;
}

const ELECTRIC: When = { engine: { cycle: 'electric' } };
const BURNS: When = { engine: { cycle: ['four-stroke', 'two-stroke'] } };

/** Neither of its batteries is of lead; that of a machine that burns fuel counts as no drive battery. */
const NO_LEAD: When = { battery: { family: 'lithium' }, driveBattery: { chemistry: ['lithium-ion', 'none'] } };

const MANUAL = "The machine's service manual.";

export const CAUTIONS: readonly Caution[] = [
  {
    id: 'petrol-vapour',
    title: 'Petrol vapour',
    text: 'Petrol gives off vapour that lights far below freezing (flash point about −40 °C, −40 °F) and, being heavier than air, runs along the floor. Outdoors or with doors open; no flame, pilot light, heater, grinder or smoking; no battery charging beside an open tank. Cool engine. Approved, labelled containers, stood on the ground while they are filled. Wipe up spills; keep the rags outdoors.',
    defer: 'The local fire code, which also limits what may be kept at home.',
    unless: ELECTRIC,
  },
  {
    id: 'carbon-monoxide',
    title: 'Carbon monoxide',
    text: 'Never run an engine indoors, not with the door open either: a small engine fills a garage to a deadly level within minutes, and the gas cannot be smelled. Push the machine outside, exhaust away from doors and windows.',
    defer: 'NIOSH and local health and safety rules. Headache or dizziness: out into fresh air and call for help.',
  },
  {
    id: 'battery-acid-gas',
    title: 'Battery acid and hydrogen',
    text: 'Charging gives off hydrogen, which explodes; acid burns eyes and skin. Ventilate, no sparks or flame, eye protection and gloves. Switch the charger off before its clips are put on or taken off. Acid on skin or in eyes: rinse with much water at once and see a doctor.',
    defer: "The battery maker's and the charger maker's instructions.",
    unless: NO_LEAD,
  },
  {
    id: 'battery-leads',
    title: 'Order of the battery leads',
    text: 'Negative off first, negative on last: then a spanner that touches the frame makes no spark. Key off. Rings and watch off. Hold the inner nut of a terminal stud while the outer one turns.',
    defer: MANUAL,
  },
  {
    id: 'frozen-battery',
    title: 'Never charge a frozen battery',
    text: 'A flat battery freezes a little below 0 °C (32 °F); charged while frozen it can burst. A bulged case or ice in it: do not charge. Thaw it at room temperature; if the case is cracked or bulged, take it to the collection point.',
    defer: "The battery maker's instructions.",
    unless: NO_LEAD,
  },
  {
    id: 'lithium-cold',
    title: 'No lithium charging below freezing',
    text: 'A lithium iron phosphate battery charged below 0 °C (32 °F) is damaged for good. Warm it first. Use a charger made for that chemistry; one with a desulphating stage is not.',
    defer: "The battery maker's instructions.",
    unless: { battery: { family: ['flooded', 'sealed'] } },
  },
  {
    id: 'heavy-battery',
    title: 'Heavy battery',
    text: 'Lift it by its handle or a strap, never by its posts: upright, close to the body, back straight. Two people or a barrow where it is more than one lifts easily.',
    defer: 'Local rules on lifting by hand.',
    // Those of motorcycles and the like weigh some 2 to 8 kg: nobody needs a barrow.
    unless: { kind: ['motorcycle', 'scooter', 'snow-machine', 'quad', 'mower'], driveBattery: { present: false } },
  },
  {
    id: 'drive-battery',
    title: 'Lithium drive battery',
    text: 'Never charge it below 0 °C (32 °F): that harms its cells for good. Its own charger only, on ground that cannot burn, not in an escape route, not overnight or unwatched. Swollen, cracked, wet, smelling or warm by itself: neither charge nor open it; outside, away from buildings, and to a collection point that takes damaged ones. Smoke or hissing: leave, shut the door, call the fire brigade.',
    defer: MANUAL,
    unless: { driveBattery: { chemistry: ['lead-acid', 'none'] } },
  },
  {
    id: 'high-voltage',
    title: 'High voltage',
    text: 'Orange cables and the inside of battery, motor and controller can kill, switched off too. They are opened and unplugged by the maker’s or a licensed workshop only. A damp or damaged pack counts as live.',
    defer: MANUAL,
    unless: { driveBattery: { present: false } },
  },
  {
    id: 'starter-stud',
    title: 'Starter stud is live',
    text: 'The starter stud is live as long as the battery is connected: battery out first. Hold the inner nut while the outer one turns, or the stud turns and breaks the wires inside.',
    defer: MANUAL,
  },
  {
    id: 'stands-not-jacks',
    title: 'Stands, not jacks',
    text: 'A jack lifts, a stand holds. Level firm floor, wheels that stay down chocked, rated stands at the lifting points, a shake test before a hand or head goes underneath.',
    defer: `${MANUAL} It names the lifting points.`,
  },
  {
    id: 'pressure-washer',
    title: 'Pressure washer and hot engine',
    text: 'Let engine, exhaust and brakes cool before water goes on them. No high pressure at bearings, seals, chain, electrics, air intake, radiator fins or decals.',
    defer: MANUAL,
    unless: ELECTRIC,
  },
  {
    id: 'water-electric',
    title: 'Water and electrics',
    text: 'Switched off, charging cable off, socket cap shut. No high pressure, no jet at motor, battery bay, controller, display or plugs. Nothing is switched on or charged while it is wet.',
    defer: MANUAL,
    unless: BURNS,
  },
  {
    id: 'hot-parts',
    title: 'Hot parts and hot oil',
    text: 'Exhaust, oil and coolant burn skin. Oil is drained warm, not hot: a hand can be held on the engine case.',
    defer: MANUAL,
  },
  {
    id: 'hot-coolant',
    title: 'Never open a hot cooling system',
    text: 'A hot system is under pressure and scalds. Open the cap only when it is cold to the touch.',
    defer: MANUAL,
    unless: { cooling: { kind: ['air', 'none'] } },
  },
  {
    id: 'coolant-poison',
    title: 'Coolant is poison',
    text: 'Ethylene glycol tastes sweet and kills animals and children. Catch every drop, cover the pan, wash spills away with much water. Never into a drain or onto the ground.',
    defer: 'The local collection point. Swallowed: a poison centre at once.',
  },
  {
    id: 'used-oil',
    title: 'Used oil',
    text: 'Used oil harms skin and water. Gloves; catch it, close it in its old can, take oil and filter to the collection point. Keep other liquids out of it.',
    defer: 'Local rules on hazardous waste.',
  },
  {
    id: 'brakes-steering',
    title: 'Brakes and steering',
    text: 'A fault here kills. A check that fails keeps the machine in until it is put right. No oil, grease, wax or protective film on discs, drums, pads or tyre treads.',
    defer: 'The service manual; where you are not sure, a licensed workshop.',
  },
  {
    id: 'brake-fluid',
    title: 'Brake fluid',
    text: 'It takes up water, eats paint and must be of the kind named on the reservoir; silicone and glycol fluids do not mix. Only from a sealed container. Cover paint, rinse spills with water.',
    defer: 'The service manual; where you are not sure, a licensed workshop.',
  },
  {
    id: 'spark-plug',
    title: 'Spark and petrol mist',
    text: 'Before an engine is turned with a plug out: ignition lead earthed on the engine or unplugged, face and flame away from the plug hole. Plugs come out of a cold head only; thread them in by hand first.',
    defer: MANUAL,
  },
  {
    id: 'pinch-belt-track',
    title: 'Belts, chains, track',
    text: 'Machine off, key out before fingers come near a belt, chain, sprocket, sheave or track. Never turn a chain under power while wiping it. Nobody behind a raised track that is driven.',
    defer: MANUAL,
  },
  {
    id: 'blade',
    title: 'Blades',
    text: 'Ignition off, key out, spark plug lead off before a hand goes near a blade or under the deck; the lead goes on last, with hands and tools clear. Heavy gloves. A mower that is tipped: air filter and carburettor up.',
    defer: MANUAL,
    unless: [{ kind: ['motorcycle', 'scooter', 'snow-machine', 'quad', 'side-by-side', 'car'] }, ELECTRIC],
  },
  {
    id: 'blade-electric',
    title: 'Blades',
    text: 'Safety key out and drive battery out, or switched off where it is built in, before a hand goes near a blade or under the deck. Heavy gloves.',
    defer: MANUAL,
    unless: BURNS,
  },
  {
    id: 'hydraulics',
    title: 'Loader, linkage, implement',
    text: 'Lower everything to the ground and release the pressure. Never work under a raised loader, plough or implement without its lock. Oil from a pin-hole leak goes through skin: look for leaks with card, not with a hand.',
    defer: 'The service manual. Oil under the skin is an emergency: hospital at once.',
  },
  {
    id: 'eye-protection',
    title: 'Eye protection',
    text: 'Springs, clips, compressed air, wire brushes and spray cans: wear goggles.',
    defer: 'The label of what you use.',
  },
  {
    id: 'spray',
    title: 'Sprays',
    text: 'Oil, cleaner and protective film from a can burn and are bad to breathe: outdoors or with moving air, cool machine, no flame. Nothing on brakes, tyre treads, footrests or seat.',
    defer: 'The label of what you use.',
  },
  {
    id: 'torque',
    title: 'Torque',
    text: 'A torque holds for the thread as it is stated, dry or lubricated: grease on a thread stated dry overstretches the bolt. Where no figure is published, snug evenly, check, recheck.',
    defer: MANUAL,
  },
  {
    id: 'rodent-bait',
    title: 'Bait and droppings',
    text: 'Bait kills pets and wild animals: use traps or closed boxes only. Do not sweep dry droppings; wet them with disinfectant, wear gloves and a mask.',
    defer: 'The label, and local health rules.',
  },
  {
    id: 'vacuum-bag',
    title: 'Closed bag',
    text: 'Nothing that gives off vapour or is warm goes into a closed bag: cool and dry machine, no smell from it, battery out or disconnected.',
    defer: "The bag maker's instructions.",
  },
  {
    id: 'first-ride',
    title: 'First use',
    text: 'Tyres or track, brakes and whoever drives are cold. A short loop near home in daylight, brakes tried at walking pace first; full protective clothing where you sit in the open.',
    defer: 'Your own judgement: anything that feels wrong ends the outing.',
  },
];

/** Every id of the table. */
export const CAUTION_IDS: readonly string[] = CAUTIONS.map((row) => row.id);

const BY_ID = new Map(CAUTIONS.map((row) => [row.id, row]));

/**
 * The row of a caution.
 * @param id - id in the table; steps of the strip-down may carry a caution in the user's own words instead
 * @returns the row, or undefined where it is the user's own text
 */
export function caution(id: string): Caution | undefined {
  return BY_ID.get(id);
}
