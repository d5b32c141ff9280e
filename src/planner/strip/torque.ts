import type { Assembly, Fastener } from '../household.ts';
import type { TorqueRow } from '../season-plan.ts';
import { UNITS } from '../units/index.ts';

const POUND_FOOT_NM = UNITS.find((u) => u.dimension === 'torque' && u.names[0] === 'lbf·ft')!.factor;

/** What is said of the figure's thread. */
const CONDITION: Record<Fastener['condition'], string> = {
  dry: 'the figure is for a dry thread',
  lubricated: 'the figure is for a lubricated thread',
  unstated: 'whether dry or lubricated is not stated',
};

/**
 * Torque rows of one assembly, one for each kind of fastener, in the order of the content.
 *
 * The figure is shown as published, also where a lubricant goes on: a lubricated thread needs less torque for the same
 * tension, but by how much depends on the lubricant, so nothing is corrected silently.
 * @param assembly - with its fasteners
 * @returns rows in N·m and lbf·ft
 * Source: 1 lbf·ft by definition (units table); notes: common practice.
 */
export function torqueRows(assembly: Assembly): TorqueRow[] {
  return assembly.fasteners.map((f) => {
    const nm = f.torqueNm;
    if (nm !== undefined && !(nm > 0 && Number.isFinite(nm))) {
      throw new RangeError(`found a torque of ${nm} N·m for "${f.what}", expected more than 0`);
    }
    return {
      what: `${assembly.name}: ${f.what}`,
      count: f.count,
      head: f.size ? `${f.head} (${f.size})` : f.head,
      torqueNm: nm,
      torqueLbfFt: nm === undefined ? undefined : nm / POUND_FOOT_NM,
      condition: f.condition,
      note: notes(assembly, f).join('; '),
    };
  });
}

function notes(assembly: Assembly, f: Fastener): string[] {
  const leaks = f.banjo || assembly.opensFluid !== undefined;
  const said =
    f.torqueNm === undefined
      ? [`no published figure: snug evenly, check${leaks ? ' for leaks' : ''}, recheck`]
      : [CONDITION[f.condition]];
  if (f.banjo) said.push('a new sealing washer on each side of the fitting');
  if (f.threadlock) said.push(`thread lock, ${f.threadlock} strength`);
  if (f.antiSeize) {
    said.push(
      f.torqueNm !== undefined && f.condition !== 'lubricated'
        ? 'anti-seize: a lubricated thread needs less torque for the same tension; the figure is as published, not corrected'
        : 'anti-seize',
    );
  }
  return said;
}
