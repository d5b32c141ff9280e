import { airPicture, airTable } from '../../figures/index.ts';
import { html, type Markup } from '../html.ts';
import { WORDS } from '../words.ts';
import { facts, figure, section, whys } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.machine.air;
const metal = WORDS.machine.protection;

/** The air of the store and what it does to metal, then what is done against it. */
export function air(showing: Showing): Markup {
  return html`${store(showing)}${protection(showing)}`;
}

function store({ machine: { air, corrosion, name }, format, say, fold }: Showing): Markup {
  const { quantity, amount, number } = format;
  const [low, high] = [quantity(air.lowestC, '°C'), quantity(air.highestC, '°C')];
  const { title, description } = WORDS.figures.air;
  const about = { id: 'air-picture', title: title(name), description: description(low, high) };
  const legend: [string, string][] = [
    ['temperature', words.legend.temperature],
    ['dew', words.legend.dewPoint],
    ['wet', words.legend.wet],
    ...(air.frostSayable ? [['frost', words.legend.frost] as [string, string]] : []),
    ...(air.condensationSayable ? [['condensation', words.legend.condensation] as [string, string]] : []),
  ];
  const caveats = [words.typical(air.typicalFactor, air, number), ...corrosion.caveats.map(format.figures)];
  return section(
    'air',
    words.heading,
    html`<div class="pair">${figure(airPicture({ name, air }, about, say), legend, airTable({ name, air }, say), fold)}<div class="stack">${facts(
      [
        [words.reckoned, quantity(air.reckonedLowC, '°C')],
        [words.lowest, low],
        [words.highest, high],
        [metal.class, corrosion.category],
        [metal.steel, metal.perYear(amount(corrosion.steelUmPerYear, 'µm'))],
        [metal.zinc, metal.perYear(amount(corrosion.zincUmPerYear, 'µm'))],
      ],
    )}<p class="text quiet">${words.which}</p>${air.why && html`<p class="text">${air.why}</p>`}
<p class="text quiet">${metal.uncertainty(number(corrosion.uncertainty.low), number(corrosion.uncertainty.high))}</p>
${fold({
  summary: WORDS.derivation.caveat,
  body: html`<div class="stack">${caveats.map((text) => html`<p class="text quiet">${text}</p>`)}</div>`,
})}</div></div>`,
  );
}

function protection(showing: Showing): Markup {
  const { protection, desiccant, dehumidifierRhPct, derivations } = showing.machine.corrosion;
  const { number } = showing.format;
  return section(
    'protection',
    metal.heading,
    html`<p><strong>${protection.name}.</strong> ${protection.reason}</p>
<ul class="text">${protection.measures.map((text) => html`<li>${text}</li>`)}</ul>`,
    facts([
      [
        metal.desiccant,
        desiccant &&
          html`${metal.desiccantUnits(number(Math.max(desiccant.din55474Units, desiccant.milStd2073Units)), number(desiccant.din55474Units), number(desiccant.milStd2073Units))} <span class="small quiet">${desiccant.note}</span>`,
      ],
      [
        metal.humidity,
        dehumidifierRhPct && metal.humidityAt(number(dehumidifierRhPct.low), number(dehumidifierRhPct.high)),
      ],
    ]),
    html`<div class="whys">${whys(derivations, showing)}</div>`,
  );
}
