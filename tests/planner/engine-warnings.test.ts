import { expect, test } from 'vitest';
import { engineWarnings } from '../../src/planner/engine-warnings.ts';
import { readWith, SMALLEST } from '../content/helpers.ts';

/** What is said of a machine of a kind with some lines about its engine. */
function saidOf(kind: string, lines = ''): string[] {
  const [place] = /^place: .*$/m.exec(SMALLEST)!;
  const { household: found, problems } = readWith({
    'machines/one.yaml': `name: One\nkind: ${kind}\n${place}\n${lines}\n`,
  });
  expect(problems).toEqual([]);
  return engineWarnings(found!.machines.find((m) => m.id === 'one')!).map(({ text, act }) => `${text} ${act}`);
}

// Common practice: small engines for two wheels, for snow, for quads and on mowers are made with either cycle; cars, side-by-sides
// and tractors with petrol engines are four-strokes.
test.each(['motorcycle', 'scooter', 'quad', 'mower'])(
  'a %s of which nobody said its engine could be a two-stroke',
  (kind) => {
    const said = saidOf(kind);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^Taken for a four-stroke.*two-stroke has no engine oil to drain.*oil mixed into/);
  },
);

test.each(['car', 'side-by-side', 'tractor'])('a %s is a four-stroke, and nothing is asked', (kind) => {
  expect(saidOf(kind)).toEqual([]);
});

test('a snow machine could be a four-stroke, and a two-stroke could run on mixture', () => {
  expect(saidOf('snow-machine')[0]).toMatch(
    /^Taken for a two-stroke with an oil tank of its own.*four-stroke wants its own oil/,
  );
  expect(saidOf('snow-machine', 'engine: { cycle: two-stroke }')[0]).toMatch(
    /^Taken for a two-stroke with an oil tank/,
  );
  expect(saidOf('scooter', 'engine: { cycle: two-stroke }\nfuel: { premix: true }')[0]).toMatch(
    /oil mixed in: nobody said/,
  );
});

test.each([
  ['motorcycle', 'engine: { cycle: four-stroke }'],
  ['scooter', 'engine: { cycle: two-stroke, twoStrokeOil: premix }'],
  ['snow-machine', 'engine: { cycle: two-stroke, twoStrokeOil: injected }'],
  ['snow-machine', 'engine: { cycle: four-stroke }'],
  ['mower', 'engine: { cycle: electric }'],
])('a %s that says %s is taken at its word', (kind, lines) => {
  expect(saidOf(kind, lines)).toEqual([]);
});
