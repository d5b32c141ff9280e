/** SeasonPlan -> the markup of the planner page, slot by slot. Runs in the worker, so the page only puts text in place. */
import { yearRing } from '../../figures/index.ts';
import type { SeasonPlan } from '../../planner/season-plan.ts';
import { drawn, html, type Markup } from '../../site/html.ts';
import { SHEETS, type SheetKind } from '../../site/sheet-lists.ts';
import { air } from '../../site/show/air.ts';
import { batteries } from '../../site/show/battery.ts';
import { dates } from '../../site/show/dates.ts';
import { fluids } from '../../site/show/fluids.ts';
import { foldedAway } from '../../site/show/fold.ts';
import { formOnly } from '../../site/show/form-only.ts';
import { section, warningList } from '../../site/show/parts.ts';
import { sheetBody, sheetHead, sheetMargins } from '../../site/show/sheet.ts';
import { type MethodTitles, type Showing, showingOf } from '../../site/show/showing.ts';
import { days } from '../../site/show/steps.ts';
import { assumed, longer } from '../../site/show/unsure.ts';
import { WORDS } from '../../site/words.ts';
import { PLANNER } from './words.ts';

/** What the page has in sight: the plan, or one of its sheets. */
export type View = 'plan' | SheetKind;

const PARTS = {
  warnings: ({ plan, machine, fold, form }) => {
    const told = [...machine.warnings, ...plan.warnings];
    const all = form ? told.map((w) => ({ ...w, act: formOnly(w.act) })) : told;
    return all.length > 0 && section('warnings', WORDS.machine.warnings, warningList(all, fold));
  },
  dates,
  ring,
  battery: batteries,
  fluids,
  air,
  days: (showing) => days(showing, PLANNER.days),
  assumed,
  longer,
  'lay-up': (showing) => sheet(showing, 'lay-up'),
  'start-up': (showing) => sheet(showing, 'start-up'),
} satisfies Record<string, (showing: Showing) => Markup | false>;

export type Slot = keyof typeof PARTS;

/** Markup by slot; a slot that is absent stays as it is. */
export type Slots = Partial<Record<Slot, string>>;

export interface Shown {
  slots: Slots;
  /** By slot, what unfolds in it, by its key. */
  folds: Partial<Record<Slot, Record<string, string>>>;
  machines: { id: string; name: string }[];
  shown: string;
  name: string;
  season: { lastUse: string; firstUse: string };
  /** Styles of the margins of the two sheets. */
  margins: { 'lay-up': string; 'start-up': string };
}

/**
 * One machine of a plan, as markup.
 * @param plan - of the whole household
 * @param id - the machine; the first where there is none of that id
 * @param how - names of the calculations; whether the reader answers the form; while the slider moves,
 *   what is in sight: all of that but what a longer season would cost, which is tried later
 */
export function show(
  plan: SeasonPlan,
  id: string | undefined,
  { methods, form, moving }: { methods: MethodTitles; form: boolean; moving?: View | undefined },
): Shown {
  const machine = plan.machines.find((m) => m.id === id) ?? plan.machines[0]!;
  const { format } = showingOf(plan, machine, methods);
  const shown: Shown = {
    slots: {},
    folds: {},
    machines: plan.machines.map((m) => ({ id: m.id, name: m.name })),
    shown: machine.id,
    name: machine.name,
    season: { lastUse: machine.season.lastUse, firstUse: machine.season.firstUse },
    margins: {
      'lay-up': sheetMargins(machine, 'lay-up', format),
      'start-up': sheetMargins(machine, 'start-up', format),
    },
  };
  for (const slot of Object.keys(PARTS) as Slot[]) {
    if (moving !== undefined && !movesIn(moving, slot)) continue;
    const folds: Record<string, string> = {};
    const part = PARTS[slot](showingOf(plan, machine, methods, foldedAway(folds), form));
    shown.slots[slot] = part === false ? '' : part.text;
    shown.folds[slot] = folds;
  }
  return shown;
}

function movesIn(view: View, slot: Slot): boolean {
  return view === 'plan' ? !SHEETS.some((sheet) => sheet === slot) && slot !== 'longer' : slot === view;
}

function sheet(showing: Showing, kind: SheetKind): Markup {
  return html`<div class="sheet stack">${sheetHead(showing, kind, 2)}${sheetBody(showing, kind, 3)}</div>`;
}

function ring({ plan, machine, format, say }: Showing): Markup {
  const outdoorC = plan.places.find((p) => p.id === machine.place)?.outdoorTenDayC ?? [];
  const names = format.listText(plan.machines.map((m) => m.name));
  const svg = yearRing(
    { asOf: plan.asOf, machines: plan.machines, outdoorC },
    { id: 'ring', title: WORDS.figures.ring.title, description: WORDS.figures.ring.description(names) },
    say,
  );
  return drawn(svg);
}
