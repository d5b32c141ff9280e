import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const STATUS = ['seen', 'secondary copy', 'derived', 'from memory', 'exact by definition'];

test.each(['fuel', 'coolant', 'tyres', 'corrosion', 'desiccant', 'fluids', 'units'])(
  'every published case of %s names its source and how well it is known',
  (name) => {
    const groups = JSON.parse(readFileSync(new URL(`./${name}.json`, import.meta.url), 'utf8')) as Record<
      string,
      unknown
    >;
    const cases = Object.values(groups).flatMap((group) => (Array.isArray(group) ? group : [])) as {
      source?: unknown;
      status?: unknown;
    }[];
    expect(cases.length).toBeGreaterThan(0);
    const without = cases.filter(
      (c) => !(typeof c.source === 'string' && c.source.length > 8 && STATUS.includes(String(c.status))),
    );
    expect(without).toEqual([]);
  },
);
