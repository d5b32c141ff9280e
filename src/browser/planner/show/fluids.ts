import { WORDS } from '../../../site/words.ts';
import { html, type Markup } from '../../html.ts';
import { facts, section, table, whys } from './parts.ts';
import type { Showing } from './showing.ts';

const f = WORDS.machine.fuel;
const c = WORDS.machine.coolant;
const t = WORDS.machine.tyres;
const maybe = <T>(value: T | undefined, text: (value: T) => string) => (value === undefined ? undefined : text(value));

/** Fuel, coolant and tyres: amounts first. */
export function fluids(showing: Showing): Markup {
  return html`${fuel(showing)}${coolant(showing)}${tyres(showing)}`;
}

function fuel({ machine: { fuel }, format, quick, methodTitle }: Showing): Markup {
  if (!fuel) return html``;
  const { quantity, amount, number, plainDate } = format;
  return section(
    'fuel',
    f.heading,
    html`<p class="text"><strong>${f.choice[fuel.choice]}.</strong> ${fuel.reason}</p>`,
    facts([
      [f.add, maybe(fuel.addL, (v) => quantity(v, 'L'))],
      [f.dose, maybe(fuel.doseML, (v) => quantity(v, 'mL'))],
      [f.run, maybe(fuel.runMinutes, (v) => `${number(Math.ceil(v))} ${WORDS.units.min}`)],
      [f.drained, maybe(fuel.drainedL, (v) => quantity(v, 'L'))],
      [f.cans, maybe(fuel.cans, number)],
      [f.drainedUseBy, maybe(fuel.drainedUseBy, plainDate)],
      [f.tap, fuel.tap],
      [f.useBy, `${plainDate(fuel.useBy.earliest)} – ${plainDate(fuel.useBy.latest)}`],
      [f.atFirstUse, `${f.verdict[fuel.atFirstUse.verdict]}. ${fuel.atFirstUse.text}`],
      [f.full, amount(fuel.fullAtHottestPct, '%', 1)],
      [
        f.limit,
        `${fuel.localLimit.exceeded ? `${f.exceeded} ` : ''}${fuel.localLimit.text} ${f.limitAt(fuel.localLimit.where)}`,
      ],
    ]),
    quick ? html`` : whys(fuel.derivations, format, methodTitle),
  );
}

function coolant({ machine: { coolant }, format, quick, methodTitle }: Showing): Markup {
  if (!coolant) return html``;
  const { quantity, amount, number, plainDate } = format;
  return section(
    'coolant',
    c.heading,
    html`<p class="text">${coolant.text}</p>`,
    facts([
      [c.holds, coolant.freezeC === undefined ? c.unknown : quantity(coolant.freezeC, '°C')],
      [c.needs, quantity(coolant.needC, '°C')],
      [c.strength, maybe(coolant.strength, (v) => amount(v * 100, '%', 0))],
      [c.target, maybe(coolant.targetStrength, (v) => amount(v * 100, '%', 0))],
      [c.replace, maybe(coolant.replaceL || undefined, (v) => quantity(v, 'L'))],
      [c.swaps, maybe(coolant.swaps || undefined, number)],
      [c.testBy, maybe(coolant.testBy, plainDate)],
      [c.ageDue, maybe(coolant.ageDue, plainDate)],
    ]),
    quick ? html`` : whys(coolant.derivations, format, methodTitle),
  );
}

function tyres({ machine: { tyres }, format: { quantity } }: Showing): Markup {
  if (tyres.length === 0) return html``;
  return section(
    'tyres',
    t.heading,
    table(
      t.heading,
      t.head,
      tyres.map((tyre) => [
        t.times(tyre.position, tyre.count),
        quantity(tyre.setKPa, 'kPa'),
        quantity(tyre.normalKPa, 'kPa'),
        quantity(tyre.expectedAtStartUpKPa, 'kPa'),
        t.stands[`${tyre.standsOnTyres}`] +
          (tyre.moveEveryMonths === undefined ? '' : `, ${t.move(tyre.moveEveryMonths)}`),
      ]),
    ),
  );
}
