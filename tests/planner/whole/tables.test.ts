/** Tables of the planner: no row is without its words, no two rows are the same one. */
import { expect, test } from 'vitest';
import { CHEMISTRIES } from '../../../src/planner/battery/index.ts';
import { GLYCOLS } from '../../../src/planner/coolant/glycols.ts';
import { BAGS, FILMS } from '../../../src/planner/corrosion/desiccant.ts';
import { DOSE_RESPONSE } from '../../../src/planner/corrosion/iso9223.ts';
import { PROTECTION } from '../../../src/planner/corrosion/protection.ts';
import { PHASES } from '../../../src/planner/events/draft.ts';
import { BRAKE_FLUIDS } from '../../../src/planner/fluids/brake-fluid.ts';
import { BLENDS, CHOICE_RULES, KEEPING, LIMITS } from '../../../src/planner/fuel/index.ts';
import { CHECKS, type Check } from '../../../src/planner/methods/checks.ts';
import { METHODS } from '../../../src/planner/methods/index.ts';
import { ENCLOSURES } from '../../../src/planner/storage/index.ts';
import { METALS } from '../../../src/planner/storage/metals.ts';
import { FACTS } from '../../../src/planner/tasks/fact-table.ts';
import { AMOUNTS, CAUTIONS } from '../../../src/planner/tasks/index.ts';
import { UNITS } from '../../../src/planner/units/index.ts';

const TABLES: Record<string, [rows: readonly object[], key: (row: never) => unknown]> = {
  chemistries: [Object.values(CHEMISTRIES), (row: { id: string }) => row.id],
  glycols: [GLYCOLS, (row: { id: string }) => row.id ?? JSON.stringify(row)],
  bags: [BAGS, (row: { kind: string }) => row.kind],
  films: [FILMS, (row: object) => JSON.stringify(row)],
  'dose and response': [DOSE_RESPONSE, (row: { name: string }) => row.name],
  protection: [PROTECTION, (row: { name: string }) => row.name],
  phases: [Object.values(PHASES), (row: { word: string }) => row.word],
  'brake fluids': [BRAKE_FLUIDS, (row: { id: string }) => row.id ?? JSON.stringify(row)],
  blends: [BLENDS, (row: { id: string }) => row.id ?? JSON.stringify(row)],
  'rules of the fuel': [CHOICE_RULES, (row: { id: string }) => row.id],
  'how petrol keeps': [KEEPING, (row: { id: string }) => row.id],
  limits: [LIMITS, (row: { country: string }) => row.country],
  checks: [CHECKS, (row: Check) => [row.file, row.list, row.ours, row.published].join(' ')],
  methods: [METHODS, (row: { key: string }) => row.key],
  enclosures: [ENCLOSURES, (row: { id: string }) => row.id],
  metals: [METALS, (row: { id: string }) => row.id],
  facts: [FACTS, (row: { path: string }) => row.path],
  amounts: [AMOUNTS, (row: { name: string }) => row.name],
  cautions: [CAUTIONS, (row: { id: string }) => row.id],
  units: [UNITS, (row: object) => JSON.stringify(row)],
};

/** A count has no unit; a page of the program has no place outside. */
const MAY_BE_EMPTY = new Set(['unit', 'page']);

function* texts(value: unknown, field: string): Generator<[string, string]> {
  if (typeof value === 'string') yield [field, value];
  else if (Array.isArray(value)) for (const one of value) yield* texts(one, field);
  else if (typeof value === 'object' && value !== null)
    for (const [name, one] of Object.entries(value)) yield* texts(one, name);
}

test.each(Object.entries(TABLES))('%s', (_, [rows, key]) => {
  expect(rows.length).toBeGreaterThan(0);
  expect(new Set(rows.map((row) => key(row as never))).size).toBe(rows.length);
  for (const row of rows)
    for (const [field, text] of texts(row, '')) {
      if (MAY_BE_EMPTY.has(field) && text === '') continue;
      expect(text, `${field} of ${JSON.stringify(row)}`).toMatch(/\S/);
      expect(text).not.toMatch(/^\s|\s$| {2}|undefined|NaN/);
    }
});
