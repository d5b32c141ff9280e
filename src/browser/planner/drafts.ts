/** What the form holds, as flat text by field, and how it becomes answers. Whatever a device gives back is read as unknown. */
import type { Answers } from '../../content/answers.ts';
import { isId, slug } from '../../content/ids.ts';
import { ROAD_KINDS } from '../../content/kinds.ts';
import { NO_TEXT } from '../../content/no-text.ts';
import type { BenchRecord } from '../../planner/bench-record.ts';
import { addDays, addMonths } from '../../planner/dates.ts';
import { LEAD_DAYS } from '../../planner/tasks/parts.ts';
import { recordOf } from '../bench/entries.ts';
import { decimal } from '../decimal.ts';
import { logOf } from './log-entries.ts';
import { pointIn } from './point.ts';
import { PLANNER } from './words.ts';

/** Fields of one machine and of its place. */
export const MACHINE_FIELDS = [
  'id',
  'name',
  'kind',
  'engine',
  'cooling',
  'coolant',
  'salt',
  'station',
  'stationName',
  'country',
  'point',
  'town',
  'enclosure',
  'power',
  'lastUse',
  'firstUse',
  'chemistry',
  'capacity',
  'batteryOut',
  'delivery',
  'drive',
  'driveOut',
  'tank',
  'blend',
  'log',
] as const;
/** Fields that all machines share. */
export const HOME_FIELDS = ['id', 'units', 'charger', 'keeper', 'lithium', 'dose', 'room', 'revised'] as const;

export type MachineDraft = Record<(typeof MACHINE_FIELDS)[number], string>;
export type HomeDraft = Record<(typeof HOME_FIELDS)[number], string>;

export interface Drafts {
  format: 1;
  home: HomeDraft;
  machines: MachineDraft[];
}

const LONGEST = 200;

export const emptyMachine = (n: number, like?: MachineDraft | undefined): MachineDraft => ({
  ...(Object.fromEntries(MACHINE_FIELDS.map((f) => [f, ''])) as MachineDraft),
  name: PLANNER.newMachine(n),
  kind: 'motorcycle',
  enclosure: like?.enclosure ?? 'thin-metal-shed',
  power: like?.power ?? 'false',
  station: like?.station ?? '',
  stationName: like?.stationName ?? '',
  country: like?.country ?? '',
  point: like?.point ?? '',
  town: like?.town ?? '',
});

/** New drafts: one machine, the units of the device's language, an id of their own. */
export function newDrafts(locale: string, id: string): Drafts {
  // British pumps give litres: imperial gallons are for who asks for them.
  const units = /-US$/i.test(locale) ? 'us' : 'metric';
  return {
    format: 1,
    home: { id, units, charger: '', keeper: '', lithium: '', dose: '', room: '', revised: '' },
    machines: [emptyMachine(1)],
  };
}

/**
 * Drafts from what a device kept.
 * @param kept - anything
 * @returns drafts with every field as text, or undefined where nothing of them can be read
 */
export function draftsOf(kept: unknown): Drafts | undefined {
  if (typeof kept !== 'object' || kept === null) return undefined;
  const { format, home, machines } = kept as Record<string, unknown>;
  if (format !== 1 || !Array.isArray(machines) || machines.length === 0) return undefined;
  const text = (from: unknown, field: string): string => {
    const value = typeof from === 'object' && from !== null ? (from as Record<string, unknown>)[field] : undefined;
    if (typeof value !== 'string') return '';
    // Half a log would be none.
    return field === 'log' ? value : value.slice(0, LONGEST);
  };
  const fields = <F extends string>(names: readonly F[], from: unknown) =>
    Object.fromEntries(names.map((f) => [f, text(from, f)])) as Record<F, string>;
  const house = fields(HOME_FIELDS, home);
  if (!/^home-[0-9a-f]{4,16}$/.test(house.id)) return undefined;
  return { format: 1, home: house, machines: machines.map((m) => withEngine(fields(MACHINE_FIELDS, m))) };
}

/** Which engine it has was once answered beside how petrol reaches it. */
function withEngine(m: MachineDraft): MachineDraft {
  const asked = { none: 'electric', diesel: 'diesel' }[m.delivery];
  return asked === undefined ? m : { ...m, engine: asked, delivery: '' };
}

/** True where enough is answered for a plan. */
export const canPlan = ({ machines }: Drafts) =>
  areNamed(machines) && machines.every((m) => m.station !== '' || m.point !== '');

export const areNamed = (machines: readonly MachineDraft[]) =>
  machines.every((m) => m.name.replace(NO_TEXT, '').trim() !== '');

/** The units in which coolant, a tank and a stabiliser's dose are asked for: those of tester, pump and label. */
export const unitsOf = (units: string) => ({
  tank: { us: 'US gal', imperial: 'imp gal' }[units] ?? 'L',
  dose: units === 'us' ? 'US fl oz/US gal' : 'mL/L',
  coolant: units === 'us' ? '°F' : '°C',
});

/**
 * Drafts as answers: machines that stand in the same store share one place.
 * @param drafts - enough for a plan
 * @param device - what the device says of itself
 */
export function answersOf({ home, machines }: Drafts, device: { timeZone: string; locale: string }): Answers {
  const places = new Map<string, Answers['places'][number]>();
  const ids = machineIds(machines);
  const rows = machines.map((m, at) => {
    const key = JSON.stringify([m.enclosure, m.power, m.point, m.station]);
    let place = places.get(key);
    if (!place) {
      const near = pointIn(m.point);
      place = {
        id: freePlace(m.enclosure, places),
        name: STORE_NAMES[m.enclosure] ?? m.enclosure,
        enclosure: m.enclosure,
        power: m.power === 'true',
        climate: near ? { near } : { station: m.station },
      };
      places.set(key, place);
    }
    return {
      id: ids[at]!,
      name: m.name.replace(NO_TEXT, '').trim().normalize('NFC'),
      kind: m.kind,
      place: place.id,
      lastUse: given(m.lastUse),
      firstUse: given(m.firstUse),
      battery:
        m.chemistry === 'none'
          ? (false as const)
          : { chemistry: given(m.chemistry), capacity: withUnit(m.capacity, 'Ah'), removable: yesNo(m.batteryOut) },
      fuel:
        m.engine === 'electric'
          ? (false as const)
          : { delivery: given(m.delivery), tank: withUnit(m.tank, unitsOf(home.units).tank), blend: given(m.blend) },
      engine: engineOf(m.engine),
      driveBattery: m.engine === 'electric' ? { chemistry: given(m.drive), removable: yesNo(m.driveOut) } : undefined,
      cooling: given(m.cooling),
      coolantFreezesAt: withUnit(m.coolant, unitsOf(home.units).coolant),
      salted: ROAD_KINDS.includes(m.kind) ? yesNo(m.salt) : undefined,
      record: record(m),
    };
  });
  return {
    household: {
      id: home.id,
      name: 'My machines',
      ...device,
      units: home.units === 'us' || home.units === 'imperial' ? home.units : 'metric',
      country: given(machines[0]?.country ?? ''),
      charger:
        given(home.charger) === undefined
          ? undefined
          : {
              current: withUnit(home.charger, 'A')!,
              maintainer: home.keeper === 'true',
              lithium: home.lithium === 'true',
            },
      stabiliserDose: withUnit(home.dose, unitsOf(home.units).dose),
      batteryRoom: home.room === 'true' ? { name: 'House', temperature: '18 °C' } : undefined,
      revised: home.revised,
    },
    places: [...places.values()],
    machines: rows,
  };
}

/**
 * The next rest of a machine whose last one is over: the same days, so many years later that its end is still to come. Until the
 * start-up is ticked its sheet is wanted first; three weeks after the first use the plan gives it up.
 * @param draft - its days as they were answered, and its log
 * @param today - a rest that ends today is not over
 * @returns undefined where the rest is not over, or its end was left open
 */
export function nextRest(
  { lastUse, firstUse, log }: Pick<MachineDraft, 'lastUse' | 'firstUse' | 'log'>,
  today: string,
): { lastUse: string; firstUse: string } | undefined {
  // A year that is still being typed is none.
  if (!isDay(firstUse) || firstUse >= today || firstUse < '1990') return undefined;
  const isReady = logOf(log).entries.some((said) => said.kind === 'done' && said.step === 'start-up');
  if (!isReady && today <= addDays(firstUse, LEAD_DAYS)) return undefined;
  const years = Number(today.slice(0, 4)) - Number(firstUse.slice(0, 4));
  const months = 12 * (addMonths(firstUse, 12 * years) < today ? years + 1 : years);
  return { lastUse: isDay(lastUse) ? addMonths(lastUse, months) : lastUse, firstUse: addMonths(firstUse, months) };
}

const isDay = (text: string) => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** The machines' ids: those under which something was taken along already, else by their names. */
export function machineIds(machines: readonly MachineDraft[]): string[] {
  const taken = new Set(machines.map((m) => m.id).filter(isId));
  return machines.map((m) => {
    if (isId(m.id)) return m.id;
    const wanted = slug(m.name);
    let id = wanted;
    for (let n = 2; taken.has(id); n++) id = `${wanted}-${n}`;
    taken.add(id);
    return id;
  });
}

/** Readings of a battery that the machine has no longer stay in the draft, and out of the plan. */
function record(m: MachineDraft): BenchRecord {
  const said = logOf(m.log).entries;
  return recordOf(m.chemistry === 'none' ? said.filter(({ kind }) => kind !== 'readings') : said);
}

const engineOf = (said: string) =>
  said === 'premix' || said === 'injected' ? { cycle: 'two-stroke', twoStrokeOil: said } : { cycle: given(said) };

/** What a store is called where nobody has named it. */
export const STORE_NAMES: Record<string, string> = {
  open: 'Outdoors',
  carport: 'Carport',
  'thin-metal-shed': 'Metal shed',
  'timber-shed': 'Timber shed',
  'slab-garage': 'Garage',
  masonry: 'Masonry garage',
  insulated: 'Insulated garage',
  'attached-garage': 'Attached garage',
  cellar: 'Cellar',
  heated: 'Heated store',
  dehumidified: 'Dehumidified store',
};

function freePlace(wanted: string, places: ReadonlyMap<string, { id: string }>): string {
  const taken = new Set([...places.values()].map((p) => p.id));
  for (let n = 1; ; n++) {
    const id = n === 1 ? wanted : `${wanted}-${n}`;
    if (!taken.has(id)) return id;
  }
}

const given = (text: string) => (text.trim() === '' ? undefined : text.trim());

const yesNo = (text: string) => (text === '' ? undefined : text === 'true');

const withUnit = (text: string, unit: string) => (given(text) === undefined ? undefined : `${decimal(text)} ${unit}`);
