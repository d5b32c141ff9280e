import type { FuelPlan, TyrePlan } from '../../planner/season-plan.ts';
import { unitFor } from '../../planner/units/index.ts';
import { html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { dataTable, facts, section, table, whys } from './parts.ts';
import type { Showing } from './showing.ts';

const f = WORDS.machine.fuel;
const c = WORDS.machine.coolant;
const t = WORDS.machine.tyres;
const maybe = <T>(value: T | undefined, text: (value: T) => string) => (value === undefined ? undefined : text(value));

/** Fuel, coolant and tyres: amounts first, reasons under them. */
export function fluids(showing: Showing): Markup {
  return html`${fuel(showing)}${coolant(showing)}${tyres(showing)}`;
}

function fuel(showing: Showing): Markup | false {
  const { fuel } = showing.machine;
  if (!fuel) return false;
  return section(
    'fuel',
    f.heading,
    html`<p class="text"><strong>${said(fuel)}.</strong> ${fuel.reason}</p>`,
    facts([
      ...(fuel.settled ? settled(fuel, showing.format) : toDo(fuel, showing.format)),
      ...(fuel.choice === 'drain' ? drained(fuel, showing.format) : inTank(fuel, showing)),
      [
        f.limit,
        `${fuel.localLimit.exceeded === true ? `${f.exceeded} ` : ''}${fuel.localLimit.text} ${f.limitAt(fuel.localLimit.where)}`,
      ],
    ]),
    html`<div class="whys">${whys(fuel.derivations, showing)}</div>`,
  );
}

type Rows = [string, string | undefined][];

/** What is known of fuel that is drained: it is used up long before it is too old, and the tank is filled fresh. */
function drained(fuel: FuelPlan, { plainDate }: Showing['format']): Rows {
  return [
    [fuel.drainedOld ? f.drainedAwayBy : f.drainedUseBy, maybe(fuel.drainedUseBy, plainDate)],
    [f.atFirstUse, fuel.atFirstUse.text],
  ];
}

/** What is to be done, or what was: nothing is told to do that is done or too late. */
function said(fuel: FuelPlan): string {
  if (fuel.settled === 'past') return f.notTicked;
  const choice = fuel.choice === 'fill' && fuel.doseML !== undefined ? 'treat' : fuel.choice;
  return (fuel.settled ? f.chosen : f.choice)[choice];
}

function toDo(fuel: FuelPlan, { quantity, number }: Showing['format']): Rows {
  return [
    [f.add, maybe(fuel.choice === 'fill' ? fuel.addL : undefined, (v) => quantity(v, 'L'))],
    [f.dose, maybe(fuel.doseML, (v) => quantity(v, 'mL'))],
    [f.run, maybe(fuel.runMinutes, (v) => `${number(Math.ceil(v))} ${WORDS.units.min}`)],
    [f.drained, maybe(fuel.drainedL, (v) => quantity(v, 'L'))],
    [f.cans, maybe(fuel.cans, number)],
    [f.tap, fuel.tap],
  ];
}

function settled(fuel: FuelPlan, { quantity }: Showing['format']): Rows {
  if (fuel.settled === 'past') return [];
  return [
    [f.inTank, fuel.choice === 'drain' ? undefined : quantity(fuel.levelL, 'L')],
    [f.dose, maybe(fuel.doseML, (v) => quantity(v, 'mL'))],
    [f.wasDrained, maybe(fuel.drainedL, (v) => quantity(v, 'L'))],
  ];
}

/** A tank is as good as full to its brim from here on [%]. */
const BRIM_PCT = 99.5;

/** What is known of fuel that stays in the tank. */
function inTank(fuel: FuelPlan, { machine, format: { amount, quantity, plainDate } }: Showing): Rows {
  const warmest = quantity(machine.air.highestC, '°C');
  return [
    [f.useBy, `${plainDate(fuel.useBy.earliest)} – ${plainDate(fuel.useBy.latest)}`],
    [f.atFirstUse, `${f.verdict[fuel.atFirstUse.verdict]}. ${fuel.atFirstUse.text}`],
    [
      f.full,
      fuel.fullAtHottestPct < BRIM_PCT
        ? f.fullAt(amount(fuel.fullAtHottestPct, '%', 0), warmest)
        : f.brimAt(quantity(fuel.levelL, 'L'), warmest),
    ],
    [f.water, quantity(fuel.waterToleranceML, 'mL')],
    [f.breathing, fuel.breathingWaterML < 0.5 ? f.hardly : quantity(fuel.breathingWaterML, 'mL')],
  ];
}

function coolant(showing: Showing): Markup | false {
  const { coolant } = showing.machine;
  if (!coolant) return false;
  const { quantity, amount, number, plainDate } = showing.format;
  const byDay = (day: string) => (day < showing.plan.asOf ? c.now : plainDate(day));
  return section(
    'coolant',
    c.heading,
    html`<p class="text">${coolant.text}</p>`,
    facts([
      [c.holds, coolant.freezeC === undefined ? c.unknown : quantity(coolant.freezeC, '°C')],
      [c.needs, quantity(coolant.aimC, '°C')],
      [c.strength, maybe(coolant.strength, (v) => amount(v * 100, '%', 0))],
      [c.target, amount(coolant.targetStrength * 100, '%', 0)],
      [
        c.replace,
        maybe((coolant.unwritten === undefined && coolant.replaceL) || undefined, (v) =>
          quantity(v, unitFor('L', 'coolant')),
        ),
      ],
      [c.swaps, maybe((coolant.unwritten === undefined && coolant.swaps) || undefined, number)],
      [c.testBy, maybe(coolant.testBy, byDay)],
      [c.changeBy, maybe(coolant.changeBy, byDay)],
      [c.ageDue, maybe(coolant.ageDue, plainDate)],
    ]),
    html`<div class="whys">${whys(coolant.derivations, showing)}</div>`,
  );
}

function tyres(showing: Showing): Markup | false {
  const { tyres } = showing.machine;
  if (tyres.length === 0) return false;
  const { quantity } = showing.format;
  return section(
    'tyres',
    t.heading,
    table(
      t.heading,
      t.head,
      tyres.map((tyre) => [
        t.times(tyre.position, tyre.count),
        html`<strong>${quantity(tyre.setKPa, 'kPa')}</strong>`,
        quantity(tyre.normalKPa, 'kPa'),
        quantity(tyre.expectedAtStartUpKPa, 'kPa'),
        t.stands[`${tyre.standsOnTyres}`] +
          (tyre.moveEveryMonths === undefined ? '' : `, ${t.move(tyre.moveEveryMonths)}`),
      ]),
    ),
    lookIn(tyres, showing),
    html`<div class="whys">${tyres.map((tyre) => whys(tyre.derivations, showing, tyre.position))}</div>`,
  );
}

/** What the gauge should say at a look-in, by the warmth of the store. */
function lookIn(tyres: readonly TyrePlan[], { fold, format: { quantity } }: Showing): Markup | false {
  const warmths = tyres[0]?.lookIn.map((l) => l.temperatureC) ?? [];
  if (warmths.length === 0) return false;
  const body = dataTable({
    caption: t.lookIn,
    head: [t.lookInHead, ...tyres.map((tyre) => t.times(tyre.position, tyre.count))],
    rows: warmths.map((temperatureC, i) => [
      quantity(temperatureC, '°C'),
      ...tyres.map((tyre) => (tyre.lookIn[i] ? quantity(tyre.lookIn[i].expectedKPa, 'kPa') : '')),
    ]),
  });
  return fold({ summary: t.lookIn, body });
}
