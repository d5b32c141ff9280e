import { batteryPicture, batteryTable } from '../../../figures/index.ts';
import type { BatteryPlan } from '../../../planner/season-plan.ts';
import { WORDS } from '../../../site/words.ts';
import { html, type Markup } from '../../html.ts';
import { facts, figure, section, table, whys } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.machine.battery;

/** The battery: picture, care, charges, readings. */
export function battery({ machine, plan, format, say, quick, methodTitle }: Showing): Markup {
  const b = machine.battery;
  if (!b) return html``;
  const { amount, plainDate } = format;
  const pct = (value: number) => amount(value, '%', 0);
  const data = { name: machine.name, asOf: plan.asOf, battery: b };
  const svg = batteryPicture(
    data,
    {
      id: 'battery-picture',
      title: WORDS.figures.battery.title(machine.name),
      description: WORDS.figures.battery.description(
        b.charges.length,
        pct(b.thresholdPct),
        amount(b.freezingMargin.minK, 'K'),
      ),
    },
    say,
  );
  const loss = b.firstMonthLossPct;
  return section(
    'battery',
    words.heading,
    html`<div class="pair">${figure(svg, legend(b), quick ? undefined : batteryTable(data, say))}<div class="stack">${facts(
      [
        [words.care, WORDS.cares[b.care]],
        [words.rated, `${amount(b.capacityAh, 'Ah')}, ${WORDS.chemistries[b.chemistry]}`],
        [words.kept, words.keptAt[b.keptAt]],
        [words.connected, words.connectedAs[`${b.connected}`]],
        [words.threshold, pct(b.thresholdPct)],
        [
          words.lossFirstMonth,
          words.lossRange(amount(loss.expected, '%', 1), amount(loss.low, '%', 1), amount(loss.high, '%', 1)),
        ],
      ],
    )}<p class="text">${b.careReason}</p></div></div>`,
    html`<h3>${words.charges}</h3>`,
    chargeTable(b, format),
    b.calibration
      ? html`<p>${words.calibrationText(
          format.number(b.calibration.multiplier),
          format.number(b.calibration.factor),
          b.calibration.readings,
        )}</p>`
      : html``,
    b.readings.length > 0
      ? html`<h3>${words.readings}</h3>${table(
          words.readings,
          words.readingHead,
          b.readings.map((r) => [
            plainDate(r.date),
            amount(r.volts, 'V', 2),
            amount(r.temperatureC, '°C'),
            `${pct(r.stateOfChargePct)} ± ${pct(r.spreadPct)}`,
            r.usable ? words.yes : (r.why ?? ''),
          ]),
        )}`
      : html``,
    quick ? html`` : whys(b.derivations, format, methodTitle),
  );
}

/** The charges by day, or that there are none. */
export function chargeTable({ charges }: BatteryPlan, { plainDate, amount, hours }: Showing['format']): Markup {
  if (charges.length === 0) return html`<p>${words.noCharges}</p>`;
  return html`<ul class="assumed">${charges.map(
    (c) =>
      html`<li><p><strong>${words.chargeBy(plainDate(c.date))}</strong>: ${words.putBack(
        amount(c.ampHours, 'Ah', 1),
        amount(c.ampHoursMost, 'Ah', 1),
      )}, ${words.chargeHours(hours(c.hours), hours(c.hoursMost))}</p><p class="small">${c.why}</p><p class="small quiet">${
        c.expected ? words.between(plainDate(c.earliest), plainDate(c.expected)) : words.latest(plainDate(c.earliest))
      }</p></li>`,
  )}</ul>`;
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
    ['freezes', l.freezes],
    ['margin', l.margin],
  ];
}
