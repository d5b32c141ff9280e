import { airPicture, airTable } from '../../../figures/index.ts';
import { WORDS } from '../../../site/words.ts';
import { html, type Markup } from '../../html.ts';
import { facts, figure, section } from './parts.ts';
import type { Showing } from './showing.ts';

const words = WORDS.machine.air;
const metal = WORDS.machine.protection;

/** The air of the store, and what is done against it. */
export function air({ machine, format, say, quick }: Showing): Markup {
  const { air, corrosion, name } = machine;
  const { quantity } = format;
  const [low, high] = [quantity(air.lowestC, '°C'), quantity(air.highestC, '°C')];
  const svg = airPicture(
    { name, air },
    { id: 'air-picture', title: WORDS.figures.air.title(name), description: WORDS.figures.air.description(low, high) },
    say,
  );
  const l = words.legend;
  const legend: [string, string][] = [
    ['temperature', l.temperature],
    ['dew', l.dewPoint],
    ['wet', l.wet],
    ...(air.frostSayable ? [['frost', l.frost] as [string, string]] : []),
    ...(air.condensationSayable ? [['condensation', l.condensation] as [string, string]] : []),
  ];
  return section(
    'air',
    words.heading,
    html`<div class="pair">${figure(svg, legend, quick ? undefined : airTable({ name, air }, say))}<div class="stack">${facts(
      [
        [words.lowest, low],
        [words.highest, high],
        [metal.class, corrosion.category],
      ],
    )}${air.why && html`<p class="text">${air.why}</p>`}
<p><strong>${corrosion.protection.name}.</strong> ${corrosion.protection.reason}</p>
<ul class="text">${corrosion.protection.measures.map((text) => html`<li>${text}</li>`)}</ul></div></div>`,
  );
}
