/**
 * What the worker does: holds one household, plans it, and hands out markup, calendar and files. Apart from the worker so
 * that tests can ask it directly.
 */
import { type Answers, householdOf, problemsOf } from '../../content/answers.ts';
import { nearestStations, openClimateLibrary } from '../../content/climate-library.ts';
import type { ContentFile } from '../../content/files.ts';
import { countryName, placesByName, type TownsFile } from '../../content/towns.ts';
import type { Household, Machine, Procedure } from '../../planner/household.ts';
import { planSeason } from '../../planner/plan.ts';
import { planMoved } from '../../planner/plan-moved.ts';
import type { SeasonPlan } from '../../planner/season-plan.ts';
import { formatOne } from '../../planner/units/index.ts';
import type { PublishedInput } from '../../publish/inputs.ts';
import { replan } from '../bench/replan.ts';
import type { Ask, Asks, LoadedFile, Setting, StationFound } from './messages.ts';
import { pointIn } from './point.ts';
import { type Shown, show } from './show.ts';
import { PLANNER } from './words.ts';

type Answering = { [A in Ask]: (given: Asks[A][0]) => Promise<Asks[A][1]> | Asks[A][1] };

// The planner and what shows a plan are in the worker itself. Only what needs a library of its own is fetched when it is asked
// for, and with it what writes files: a second chunk that shares the planner would tear it into several, which are larger together.

/** Many towns of North America are called as one of the Old World that names a time zone: Berlin, Paris, Athens. */
const OVERSEAS: ReadonlySet<string> = new Set(['US', 'CA']);

/** How the desk gets at what is bundled. */
export type Fetch = (path: string) => Promise<unknown>;

export class Desk implements Answering {
  private readonly fetchJson: Fetch;
  private readonly setting: Setting;
  /** Names of the calculations, and whether the household comes from the form. */
  private how = { methods: {}, form: false };
  private household: Household | undefined;
  private today = '';
  /** The files that were read, or the answers from which files are written when they are asked for. */
  private held: readonly ContentFile[] | Answers = [];
  /** Last days of use that the slider has set in loaded files. */
  private moved = new Map<string, string>();
  private last: SeasonPlan | undefined;
  /** A published household with the records of this device. */
  private recorded: SeasonPlan | undefined;
  private readonly kept = new Map<string, Promise<unknown>>();

  constructor(setting: Setting, fetchJson: Fetch) {
    this.setting = setting;
    this.fetchJson = fetchJson;
  }

  async stations({ query, zone, units }: Asks['stations'][0]): Promise<StationFound[]> {
    const [library, towns] = await Promise.all([this.library(), this.get('climate/towns.json') as Promise<TownsFile>]);
    const away = (km: number) => formatOne(km, 'km', units === 'metric' ? units : 'us');
    const point = pointIn(query);
    if (point)
      return nearestStations(library, ...point, { count: 5 }).map(
        ({ climate: { id, name }, country, distanceKm }, i) => ({
          id,
          name,
          country,
          label: `${name}, ${countryName(country)}, ${PLANNER.stationFar(away(distanceKm))}`,
          point: i === 0 ? point.join() : undefined,
        }),
      );
    const home = placesByName(library, towns, zone.replace(/.*\//, '').replaceAll('_', ' '), undefined).find(
      ({ country }) => !(/^(?:Europe|Asia|Africa|Australia)\//.test(zone) && OVERSEAS.has(country)),
    );
    return placesByName(library, towns, query, home?.country).map(
      ({ id, station: name, country, distanceKm, town }) => {
        const where = countryName(country);
        if (!town) return { id, name, country, label: `${name}, ${where}` };
        const label = `${[town.name, town.state, where].filter(Boolean).join(', ')}: ${PLANNER.stationOf(name, away(distanceKm))}`;
        return { id, name, country, label, town: town.name, point: `${town.latitudeDeg},${town.longitudeDeg}` };
      },
    );
  }

  async form({ answers, asOf, machine }: Asks['form'][0]): Promise<Asks['form'][1]> {
    const problems = problemsOf(answers);
    if (problems.length > 0) return { problems };
    const [library, procedures] = await Promise.all([this.library(), this.procedures()]);
    this.hold(answers, householdOf(answers, { library, procedures }, asOf), asOf, true);
    return { problems: [], shown: this.shown(machine) };
  }

  async files({ files: picked, now, revised }: Asks['files'][0]): Promise<Asks['files'][1]> {
    const [{ contentOf, readLoaded }, procedures] = await Promise.all([import('./read-loaded.ts'), this.procedures()]);
    const files = contentOf(picked);
    if (files.length === 0) return { problems: [], count: 0 };
    const library = files.some((f) => /^places\//.test(f.path)) ? await this.library() : undefined;
    const { household, problems, day } = readLoaded(files, { now, revised, procedures, library });
    if (!household) return { problems, count: files.length };
    this.hold(files, household, day);
    const result = planSeason(household, { asOf: day });
    if (result.problems.length > 0) return { problems: result.problems, count: files.length };
    return { problems: [], shown: this.shown(undefined), count: files.length };
  }

  show({ machine }: { machine: string }): Shown {
    return this.shown(machine);
  }

  move({ machine, lastUse, moving }: Asks['move'][0]): Shown {
    const { household } = this;
    if (!household) throw new Error('found no household to move, expected one that was planned');
    const moved = (m: Machine): Machine => (m.id === machine ? { ...m, season: { ...m.season, lastUse } } : m);
    const machines = household.machines.map(moved);
    if (moving)
      return show(planMoved({ ...household, machines }, this.plan(), machine), machine, { ...this.how, moving });
    this.household = { ...household, machines };
    this.moved.set(machine, lastUse);
    return this.shown(machine);
  }

  async calendar({ machine, taken }: Asks['calendar'][0]): Promise<Asks['calendar'][1]> {
    const plan = this.plan();
    const { fresh, all, remembered, withCancelled } = await calendarFile(plan, machine);
    const { id } = plan.household;
    const earlier = taken[id] ?? '';
    return {
      file: withCancelled(fresh, earlier, all, plan.asOf),
      taken: { ...taken, [id]: remembered(fresh, earlier, plan.asOf) },
    };
  }

  async content(): Promise<LoadedFile[]> {
    const bytes = (file: ContentFile): LoadedFile => ({
      path: file.path,
      bytes: typeof file.bytes === 'string' ? new TextEncoder().encode(file.bytes) : file.bytes,
    });
    const { filesOf, withLastUse } = await import('./read-loaded.ts');
    const files = ('household' in this.held ? filesOf(this.held) : this.held).map(bytes);
    return files.map((file) => {
      const day = this.moved.get(/^machines\/(.*)\.yaml$/.exec(file.path)?.[1] ?? '');
      return day === undefined ? file : withLastUse(file, day);
    });
  }

  plan(): SeasonPlan {
    if (!this.household) throw new Error('found no household to plan, expected answers or files');
    this.last ??= planSeason(this.household, { asOf: this.today }).plan;
    return this.last;
  }

  async readRecord({ file, asOf }: Asks['readRecord'][0]): Promise<Asks['readRecord'][1]> {
    const { readRecord } = await import('../bench/read-record.ts');
    return readRecord(file, asOf);
  }

  async record({ input, ...given }: Asks['record'][0]): Promise<Asks['record'][1]> {
    const { whole, procedures, chargedFrom, ...household } = (await this.get(input)) as PublishedInput;
    const practice = (await this.get(procedures)) as Procedure[];
    const { plan, shown } = replan(
      { ...household, procedures: practice },
      given,
      whole,
      this.setting.methods,
      chargedFrom,
    );
    this.recorded = plan;
    return shown;
  }

  async recordCalendar({ machine, earlier }: Asks['recordCalendar'][0]): Promise<string> {
    if (!this.recorded) throw new Error('found no plan with records, expected one');
    const { fresh, all, withCancelled } = await calendarFile(this.recorded, machine);
    return withCancelled(fresh, earlier, all, this.recorded.asOf);
  }

  private hold(content: readonly ContentFile[] | Answers, household: Household, asOf: string, form = false): void {
    this.how = { methods: this.setting.methods, form };
    this.held = content;
    this.moved.clear();
    this.household = household;
    this.today = asOf;
    this.last = undefined;
  }

  private shown(machine: string | undefined): Shown {
    this.last = undefined;
    return show(this.plan(), machine, this.how);
  }

  private async library() {
    return this.once('library', async () => openClimateLibrary(await this.get('climate/normals.json')));
  }

  private async procedures(): Promise<Procedure[]> {
    return (await this.get('plan/procedures.json')) as Procedure[];
  }

  private get(path: string): Promise<unknown> {
    return this.once(path, () => this.fetchJson(`${this.setting.base}${path}`));
  }

  /** What was fetched once is not fetched again; what failed is. */
  private once<T>(key: string, make: () => Promise<T>): Promise<T> {
    const met = this.kept.get(key) as Promise<T> | undefined;
    if (met) return met;
    const making = make();
    this.kept.set(key, making);
    making.catch(() => this.kept.delete(key));
    return making;
  }
}

/** The calendar of a machine or of all, that of all, and what takes back the reminders of earlier ones. */
async function calendarFile(plan: SeasonPlan, machineId: string | undefined) {
  const [{ calendarWriter }, cancelled] = await Promise.all([
    import('../../calendar/calendar-file.ts'),
    import('../../calendar/cancelled.ts'),
  ]);
  const write = calendarWriter(plan);
  return { ...cancelled, fresh: write(machineId), all: write() };
}
