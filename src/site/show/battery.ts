import { batteryPicture, batteryTable } from '../../figures/index.ts';
import { later } from '../../planner/dates.ts';
import type { BatteryPlan, Charge } from '../../planner/season-plan.ts';
import { html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { facts, figure, section, table, whys } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.machine.battery;

/** The batteries of the machine: the one that drives it, and the 12 V one. */
export const batteries = (showing: Showing): Markup => html`${drive(showing)}${battery(showing)}`;

function drive(showing: Showing): Markup | false {
  const b = showing.machine.driveBattery;
  if (!b) return false;
  const { amount, quantity, plainDate } = showing.format;
  const w = WORDS.machine.driveBattery;
  const percent = (value: number) => amount(value, '%', 0);
  const day = (date: string | undefined) => (date === undefined ? w.not : plainDate(date));
  return section(
    'drive-battery',
    w.heading,
    facts([
      [w.chemistry, w.chemistries[b.chemistry]],
      [w.kept, b.keepPct.high === 100 ? w.full : w.about(percent(b.keepPct.low), percent(b.keepPct.high))],
      [w.recharge, percent(b.rechargeBelowPct)],
      [w.by, day(b.rechargeBy)],
      [w.likely, day(b.rechargeExpected)],
      [w.lowest, quantity(b.lowestStorageC, '°C')],
    ]),
    html`<p class="text">${w.text}</p><div class="whys">${whys(b.derivations, showing)}</div>`,
  );
}

/** The battery: care and numbers, picture, charges, readings and what they teach, reasons. */
export function battery(showing: Showing): Markup {
  const b = showing.machine.battery;
  if (!b) return html``;
  const { amount } = showing.format;
  const loss = b.firstMonthLossPct;
  const care = facts([
    [words.care, b.outOfReach ? words.outOfReach : WORDS.cares[b.care]],
    [words.rated, `${amount(b.capacityAh, 'Ah')}, ${WORDS.chemistries[b.chemistry]}`],
    [words.kept, words.keptAt[b.keptAt]],
    [words.connected, b.leadStillOn ? words.stillOn : words.connectedAs[`${b.connected}`]],
    [words.threshold, amount(b.thresholdPct, '%', 0)],
    [
      words.lossFirstMonth,
      loss.high > 0
        ? words.lossRange(amount(loss.expected, '%', 1), amount(loss.low, '%', 1), amount(loss.high, '%', 1))
        : words.lossMadeGood,
    ],
  ]);
  return section(
    'battery',
    showing.machine.driveBattery ? words.small : words.heading,
    html`<div class="pair"><div class="stack">${care}<p class="text">${b.careReason}</p></div>${picture(b, showing)}</div>`,
    html`<h3>${words.charges}</h3>${chargeList(b, showing.format)}`,
    readings(b, showing.format),
    calibration(b, showing.format),
    html`<div class="whys">${whys(b.derivations, showing)}</div>`,
  );
}

function picture(
  b: BatteryPlan,
  { machine: { name }, plan: { asOf }, format: { amount }, say, fold }: Showing,
): Markup {
  const data = { name, asOf, battery: b };
  const { title, description } = WORDS.figures.battery;
  const svg = batteryPicture(
    data,
    {
      id: 'battery-picture',
      title: title(name),
      description: description(b.charges.length, amount(b.thresholdPct, '%', 0), amount(b.freezingMargin.minK, 'K')),
    },
    say,
  );
  return svg === '' ? html`` : figure(svg, legend(b), batteryTable(data, say), fold);
}

/** The charges by day, what has found no day, or that there are none. */
function chargeList(
  { charges, chargeWithoutDay, chargeAtStartUp: last, outOfReach, before }: BatteryPlan,
  format: Showing['format'],
): Markup {
  const others = [
    ...(chargeWithoutDay === undefined
      ? []
      : [words[outOfReach ? 'dueOutOfReach' : 'withoutDay'](format.plainDate(chargeWithoutDay))]),
    ...(last === undefined ? [] : [words[last.overdue ? 'overdueAtStartUp' : 'atStartUp'](format.plainDate(last.due))]),
    ...(before && charges.length === 0 ? [before.text] : []),
  ];
  const left = others.length > 0 && html`${others.map((text) => html`<p class="text"><strong>${text}</strong></p>`)}`;
  if (charges.length === 0) return left || html`<p>${words.noCharges}</p>`;
  const { noCharger } = charges[0]!;
  return html`${noCharger && html`<p class="text"><strong>${words.noCharger}</strong> ${noCharger}</p>`}<ul class="assumed">${charges.map(
    (charge) => chargeItem(charge, format),
  )}</ul>${left}`;
}

function chargeItem(c: Charge, { plainDate, amount, chargeTime }: Showing['format']): Markup {
  const day = plainDate(c.date);
  // What was read too late for its own day has that of the charge.
  const latest = plainDate(later(c.date, c.earliest));
  const limits = c.expected ? words.between(latest, plainDate(c.expected)) : words.latest(latest);
  return html`<li data-past-date="${c.date}"><p><strong><time datetime="${c.date}">${
    c.overdue ? words.chargeOverdue(day, plainDate(c.earliest)) : words.chargeBy(day)
  }</time></strong>: ${words.putBack(
    amount(c.ampHours, 'Ah', 1),
    amount(c.ampHoursMost, 'Ah', 1),
  )}, ${words.chargeHours(chargeTime(c.hours, c.hoursMost))}</p>${c.before && html`<p class="small"><strong>${c.before.text}</strong></p>`}<p class="small">${c.why}</p><p class="small quiet">${
    c.overdue ? words.chargeLogged : limits
  }</p></li>`;
}

function readings(
  { readings }: BatteryPlan,
  { plainDate, amount, number, quantity }: Showing['format'],
): Markup | false {
  return (
    readings.length > 0 &&
    html`<h3>${words.readings}</h3>${table(
      words.readings,
      words.readingHead,
      readings.map((r) => [
        plainDate(r.date),
        amount(r.volts, 'V', 2),
        quantity(r.temperatureC, '°C'),
        `${amount(r.stateOfChargePct, '%', 0)} ± ${number(Math.round(r.spreadPct))}`,
        r.usable ? words.yes : (r.why ?? ''),
      ]),
    )}`
  );
}

function calibration({ calibration: c }: BatteryPlan, { number }: Showing['format']): Markup | false {
  if (!c) return false;
  /** What readings teach is known to two figures. */
  const two = (value: number) => number(Number(value.toPrecision(2)));
  return html`<div class="stack text"><h3>${words.calibration}</h3>
${c.readings > 0 && html`<p>${words.calibrationText(two(c.multiplier), two(c.factor), c.readings)}</p>`}
${c.suggests && html`<p>${c.suggests}</p>`}${c.problems.map((text) => html`<p>${text}</p>`)}</div>`;
}

function legend(b: BatteryPlan): (readonly [string, string])[] {
  const l = words.legend;
  return [
    ['band', l.band],
    ['expected', l.expected],
    ...(b.charges.length > 0 ? [['charge', l.charge] as const] : []),
    ...(b.readings.length > 0 ? [['reading', l.reading] as const] : []),
    ['threshold', l.threshold],
    ['cold', l.cold],
    ['freezes', b.chemistry === 'lifepo4' ? l.storageLimit : l.freezes],
    ['margin', l.margin],
  ];
}
