/** SeasonPlan -> the markup of the planner page, slot by slot. Runs in the worker, so the page only puts text in place. */
import { yearRing } from '../../../figures/index.ts';
import type { MachinePlan, SeasonPlan } from '../../../planner/season-plan.ts';
import { type Format, formatOf } from '../../../site/formats.ts';
import { languageOf } from '../../../site/language.ts';
import { pageMargins } from '../../../site/page-margins.ts';
import { WORDS } from '../../../site/words.ts';
import { drawn, html, type Markup } from '../../html.ts';
import { PLANNER } from '../words.ts';
import { air } from './air.ts';
import { battery } from './battery.ts';
import { datesList, numbersList } from './dates.ts';
import { fluids } from './fluids.ts';
import { section, warningList } from './parts.ts';
import { sheet } from './sheet.ts';
import type { Showing } from './showing.ts';
import { days } from './steps.ts';
import { unsure } from './unsure.ts';

/** Markup by slot; a slot that is absent stays as it is. */
export type Slots = Partial<
  Record<
    'title' | 'warnings' | 'dates' | 'ring' | 'battery' | 'fluids' | 'air' | 'days' | 'unsure' | 'lay-up' | 'start-up',
    string
  >
>;

export interface Shown {
  slots: Slots;
  machines: { id: string; name: string }[];
  shown: string;
  season: { lastUse: string; firstUse: string };
  /** Styles of the margins of the two sheets. */
  margins: { 'lay-up': string; 'start-up': string };
}

/**
 * One machine of a plan, as markup.
 * @param plan - of the whole household
 * @param id - the machine; the first where there is none of that id
 * @param quick - leaves out what a moving slider need not show
 */
export function show(
  plan: SeasonPlan,
  id: string | undefined,
  quick: boolean,
  methods: Readonly<Record<string, string>>,
): Shown {
  const machine = plan.machines.find((m) => m.id === id) ?? plan.machines[0]!;
  const format = formatFor(plan);
  const say = languageOf(format);
  const methodTitle = (key: string) =>
    methods[key] ?? Object.entries(methods).find(([k]) => key.startsWith(`${k}.`))?.[1] ?? key;
  const showing: Showing = { plan, machine, format, say, quick, methodTitle };
  const warnings = [...machine.warnings, ...plan.warnings];
  const season = WORDS.sheet.season(format.seasonName(machine.layUp.start, machine.startUp.firstUse));
  return {
    slots: {
      title: html`${machine.name}`.text,
      warnings: warnings.length > 0 ? section('warnings', WORDS.machine.warnings, warningList(warnings)).text : '',
      dates: dates(machine, format).text,
      ...(quick && plan.machines.length === 1 ? {} : { ring: ring(showing).text }),
      battery: battery(showing).text,
      fluids: fluids(showing).text,
      air: air(showing).text,
      days: days(showing, PLANNER.days).text,
      ...(quick
        ? {}
        : {
            unsure: unsure(showing).text,
            'lay-up': sheet(showing, 'lay-up').text,
            'start-up': sheet(showing, 'start-up').text,
          }),
    },
    machines: plan.machines.map(({ id, name }) => ({ id, name })),
    shown: machine.id,
    season: { lastUse: machine.season.lastUse, firstUse: machine.season.firstUse },
    margins: {
      'lay-up': pageMargins(`${machine.name} · ${WORDS.sheet.layUp}`, season),
      'start-up': pageMargins(`${machine.name} · ${WORDS.sheet.startUp}`, season),
    },
  };
}

/** Making a household's formats costs a tenth of a frame: the last one is kept. */
let kept: { key: string; format: Format } | undefined;

function formatFor({ household, units, asOf }: SeasonPlan): Format {
  const key = JSON.stringify([household.locale, household.clock, units, asOf]);
  if (kept?.key !== key) kept = { key, format: formatOf({ ...household, units, asOf }) };
  return kept.format;
}

function dates(m: MachinePlan, format: Showing['format']): Markup {
  const d = WORDS.machine.dates;
  return section(
    'dates',
    d.heading,
    datesList(m, format),
    numbersList(m, format),
    m.season.proposed ? html`<p class="text quiet">${d.proposed}: ${m.season.reasons.join(' ')}</p>` : html``,
  );
}

function ring({ plan, machine, format, say }: Showing): Markup {
  const outdoorC = plan.places.find((p) => p.id === machine.place)?.outdoorTenDayC ?? [];
  const names = format.listText(plan.machines.map((m) => m.name));
  const svg = yearRing(
    { asOf: plan.asOf, machines: plan.machines, outdoorC },
    { id: 'ring', title: WORDS.figures.ring.title, description: WORDS.figures.ring.description(names) },
    say,
  );
  return html`${drawn(svg)}`;
}
