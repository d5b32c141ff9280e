import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const files = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));

const imports = (text: string): string[] => [...text.matchAll(/from '([^']+)'/g)].map((m) => m[1]!);

test('planner, calendar and figures never ask for the time of day', () => {
  const clock = /Date\.now\(|new Date\(\)|DateTime\.(now|local)\(\)|performance\.now|Math\.random/;
  const asking = ['src/planner', 'src/calendar', 'src/figures']
    .flatMap(files)
    .filter((f) => clock.test(readFileSync(f, 'utf8')));
  expect(asking).toEqual([]);
});

test('the planner takes exponentials, logarithms and angles from nobody whose last bit differs between engines', () => {
  const ofTheEngine = /Math\.(exp|log|pow|a?sin|a?cos|a?tan|cbrt|hypot)/;
  const code = (file: string) => readFileSync(file, 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, '');
  expect(files('src/planner').filter((f) => ofTheEngine.test(code(f)))).toEqual([]);
});

test('the planner imports uuid from outside and nothing else, and no room above it', () => {
  const foreign = files('src/planner').flatMap((file) =>
    imports(readFileSync(file, 'utf8'))
      .filter((from) => (from.startsWith('.') ? !join(file, '..', from).startsWith('src/planner/') : from !== 'uuid'))
      .map((from) => `${file}: ${from}`),
  );
  expect(foreign).toEqual([]);
});

test('content, calendar and figures import nothing from pages, components or commands', () => {
  const upward = ['src/content', 'src/calendar', 'src/figures', 'src/publish'].flatMap(files).flatMap((file) =>
    imports(readFileSync(file, 'utf8'))
      .filter((from) => /\/(pages|layouts|components|site|cli|browser)\//.test(from))
      .map((from) => `${file}: ${from}`),
  );
  expect(upward).toEqual([]);
});
