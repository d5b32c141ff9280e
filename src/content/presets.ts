/**
 * What a machine is taken to be where its file is silent: one row per field, one column per kind.
 *
 * A number stands with the range it could have, [expected, low, high]; a word may stand with the two words between which it
 * could lie. Every value that is used is listed to the user as an assumption, with the row's reason. All rows are common
 * practice unless their source says otherwise.
 */
import type { MachineKind, Tyre } from '../planner/household.ts';
import { KINDS } from './kinds.ts';

export type Preset = number | string | boolean | readonly [number, number, number] | readonly [string, string, string];

export interface PresetRow {
  /** As written in content. */
  field: string;
  /** Unit of the numbers, as written in content; "" for words. */
  unit: string;
  reason: string;
  source: string;
  values: Record<MachineKind, Preset>;
}

const CP = 'common practice';

/** One value per kind, in the order of `KINDS`: motorcycle, scooter, snow-machine, quad, side-by-side, car, tractor, mower. */
function row(field: string, unit: string, reason: string, values: readonly Preset[], source = CP): PresetRow {
  return {
    field,
    unit,
    reason,
    source,
    values: Object.fromEntries(KINDS.map((kind, i) => [kind, values[i]!])) as Record<MachineKind, Preset>,
  };
}

/** Small machines are made with both. */
const EITHER: Preset = ['four-stroke', 'four-stroke', 'two-stroke'];

const same = (value: Preset): Preset[] => KINDS.map(() => value);

// biome-ignore format: a table is read by its columns
export const PRESETS: readonly PresetRow[] = [
  row('use', '', 'what this kind is mostly used for', ['road', 'road', 'snow', 'trail', 'trail', 'road', 'work', 'work']),
  row('engine.cycle', '', 'usual for this kind', [EITHER, EITHER, ['two-stroke', 'four-stroke', 'two-stroke'], EITHER, 'four-stroke', 'four-stroke', 'four-stroke', EITHER]),
  // Far more of those called tractors are ride-on mowers than compact tractors; and a small battery is the one that a charger harms.
  row('engine.cylinders', '', 'usual for this kind', [[2, 1, 4], [1, 1, 2], [2, 1, 3], [1, 1, 2], [2, 1, 3], [4, 3, 8], [2, 1, 4], [1, 1, 2]]),
  row('engine.start', '', 'usual for this kind', ['electric', 'electric', 'electric-and-pull', 'electric', 'electric', 'electric', 'electric', 'pull']),
  // A ride-on mower takes 1.4 to 2 L, a compact tractor 3 to 6 L: the smaller is taken, since too much oil does harm and too
  // little is seen at the mark.
  row('engine.oil', 'L', 'usual oil filling of this kind', [[3, 1, 4.5], [1, 0.6, 1.6], [3, 2, 4], [2, 1.5, 3.5], [2.5, 1.8, 4], [4.5, 3, 7], [1.8, 1.4, 6], [0.6, 0.4, 1.9]]),
  row('engine.oilFilter', '', 'usual for this kind', [true, false, true, true, true, true, true, false]),
  row('battery.present', '', 'usual for this kind', [true, true, true, true, true, true, true, false]),
  row('battery.chemistry', '', 'not given: the fastest loss of the usual ones is taken', same(['flooded-antimony', 'gel', 'flooded-antimony'])),
  row('battery.capacity', 'Ah', 'usual 12 V battery of this kind', [[12, 4, 20], [7, 4, 12], [18, 12, 32], [14, 10, 20], [20, 14, 35], [50, 36, 90], [26, 18, 130], [18, 12, 32]]),
  row('battery.chargeAtLayUp', '%', 'a battery charged by its machine on the last day is seldom quite full', same([95, 80, 100])),
  row('battery.removable', '', 'usual for this kind', same(true)),
  row('fuel.delivery', '', 'usual for this kind', ['carburettor', 'carburettor', 'carburettor', 'injection', 'injection', 'injection', 'carburettor', 'carburettor']),
  row('fuel.tank', 'L', 'usual tank of this kind', [[16, 8, 26], [8, 5, 14], [40, 28, 48], [17, 11, 22], [30, 20, 45], [50, 35, 80], [10, 5, 90], [1.2, 0.8, 12]]),
  row('fuel.tankMaterial', '', 'usual for this kind', ['steel', 'steel', 'plastic', 'plastic', 'plastic', 'steel', 'plastic', 'plastic']),
  row('fuel.blend', '', 'the most common pump fuel with ethanol', same(['E10', 'E5', 'E10'])),
  row('fuel.lined', '', 'few tanks are', same(false)),
  row('cooling.kind', '', 'usual for this kind', ['air', 'air', 'liquid', 'liquid', 'liquid', 'liquid', 'liquid', 'air']),
  row('cooling.volume', 'L', 'usual filling of this kind', [[2.2, 1.2, 4], [1.2, 0.8, 2], [4, 2.5, 7], [2.5, 1.5, 4], [5, 3, 8], [7, 4, 12], [9, 5, 14], [3, 2, 5]]),
  row('chassis.drive', '', 'usual for this kind', ['chain', 'variator', 'track', 'shaft', 'variator', 'gearbox', 'gearbox', 'belt']),
  row('chassis.brakes', '', 'usual for this kind', ['hydraulic', 'mixed', 'hydraulic', 'hydraulic', 'hydraulic', 'hydraulic', 'cable', 'none']),
  row('chassis.brakeFluid', '', 'the most common fluid; the reservoir cap says', ['DOT4', 'DOT4', 'DOT4', 'DOT4', 'DOT4', 'DOT4', 'DOT3', 'DOT4']),
  row('chassis.clutch', '', 'usual for this kind', ['cable', 'automatic', 'automatic', 'automatic', 'automatic', 'hydraulic', 'cable', 'none']),
  row('chassis.throttle', '', 'usual for this kind', same('cable')),
  row('chassis.offGround', '', 'nothing said: a snow machine rests with its tail raised, the others on their tyres', [false, false, true, false, false, false, false, false]),
  row('chassis.skis', '', 'usual for this kind', [false, false, true, false, false, false, false, false]),
  row('chassis.track', '', 'usual for this kind', [false, false, true, false, false, false, false, false]),
  row('chassis.greasePoints', '', 'usual for this kind', [[0, 0, 6], [0, 0, 2], [8, 4, 14], [6, 0, 12], [8, 4, 16], [0, 0, 12], [4, 0, 20], [0, 0, 6]]),
  row('chassis.centreStand', '', 'usual for this kind', [false, true, false, false, false, false, false, false]),
  row('chassis.airbox', '', 'usual for this kind', same(true)),
  row('chassis.exhaustOutlets', '', 'usual for this kind', [[1, 1, 4], [1, 1, 1], [1, 1, 3], [1, 1, 2], [1, 1, 2], [1, 1, 4], [1, 1, 1], [1, 1, 1]]),
  row('chassis.lights', '', 'usual for this kind', [true, true, true, true, true, true, true, false]),
  row('roadSalt.exposed', '', 'cars are driven on salted roads, the others are laid up before or kept off them', [false, false, false, false, false, true, false, false]),
  row('roadSalt.washed', '', 'not said to be washed', same(false)),
];

/** What is otherwise in an electric machine of a kind, and what only such a one has. */
// biome-ignore format: a table is read by its columns
export const ELECTRIC_PRESETS: readonly PresetRow[] = [
  row('battery.present', '', 'a small one beside the drive battery is usual for this kind', [true, false, true, true, true, true, true, false]),
  row('driveBattery.chemistry', '', 'most drive batteries are', same(['lithium-ion', 'lead-acid', 'lithium-ion'])),
  row('driveBattery.removable', '', 'usual for an electric machine of this kind', [false, true, false, false, false, false, false, true]),
  row('chassis.drive', '', 'usual for an electric machine of this kind', ['chain', 'hub', 'track', 'gearbox', 'gearbox', 'gearbox', 'gearbox', 'hub']),
];

/** Normal pressures where no tyres are given, gauge kPa, with the range of the usual. */
export const TYRE_PRESETS: Record<
  MachineKind,
  readonly { tyre: Omit<Tyre, 'sidewallMaxKPa' | 'madeYear'>; low: number; high: number }[]
> = {
  motorcycle: [
    { tyre: { position: 'front', count: 1, pressureKPa: 225 }, low: 180, high: 250 },
    { tyre: { position: 'rear', count: 1, pressureKPa: 250 }, low: 200, high: 290 },
  ],
  scooter: [
    { tyre: { position: 'front', count: 1, pressureKPa: 175 }, low: 125, high: 220 },
    { tyre: { position: 'rear', count: 1, pressureKPa: 225 }, low: 175, high: 280 },
  ],
  'snow-machine': [],
  quad: [{ tyre: { position: 'all', count: 4, pressureKPa: 35 }, low: 20, high: 50 }],
  'side-by-side': [{ tyre: { position: 'all', count: 4, pressureKPa: 85 }, low: 55, high: 140 }],
  car: [{ tyre: { position: 'all', count: 4, pressureKPa: 220 }, low: 170, high: 260 }],
  tractor: [
    { tyre: { position: 'front', count: 2, pressureKPa: 140 }, low: 70, high: 260 },
    { tyre: { position: 'rear', count: 2, pressureKPa: 100 }, low: 55, high: 160 },
  ],
  mower: [],
};

/** Key-off drain [mA]: expected, low, high. */
export const DRAIN_PRESETS: readonly {
  when: string;
  kinds: readonly MachineKind[];
  memory: boolean;
  values: readonly [number, number, number];
}[] = [
  { when: 'no clock, alarm or control unit', kinds: KINDS, memory: false, values: [0.5, 0, 1] },
  { when: 'a car with clock, alarm and control units', kinds: ['car'], memory: true, values: [30, 20, 50] },
  {
    when: 'clock, control unit or immobiliser',
    kinds: KINDS.filter((k) => k !== 'car'),
    memory: true,
    values: [3, 1, 30],
  },
];

/** Idle fuel flow [L/h] by cylinders: single, twin or triple, four and more. */
export function idleFlowPreset(cylinders: number): readonly [number, number, number] {
  if (cylinders <= 1) return [0.6, 0.3, 1];
  return cylinders <= 3 ? [1, 0.5, 1.6] : [1.5, 0.8, 2.5];
}

/** Density at 15 °C [kg/m³]: expected, low, high. Source: EN 228:2012, table 1 (720–775); E85: EN 15293 (760–800), from memory. */
export const DENSITY_PRESETS: Record<string, readonly [number, number, number]> = {
  E0: [740, 720, 775],
  E5: [743, 720, 775],
  E10: [746, 720, 775],
  E15: [749, 725, 775],
  E20: [752, 730, 780],
  E85: [780, 760, 800],
};

/** The row of a field; of an electric machine its own, where there is one. */
export function preset(
  field: string,
  kind: MachineKind,
  electric = false,
): { value: Preset; unit: string; reason: string } {
  const found = [...(electric ? ELECTRIC_PRESETS : []), ...PRESETS].find((r) => r.field === field);
  if (!found) throw new RangeError(`found "${field}", expected a field of the presets`);
  return {
    value: found.values[kind],
    unit: found.unit,
    reason: `${found.reason} (${found.source})`,
  };
}
