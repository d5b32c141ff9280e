/**
 * `npm test`: types, lint, content, then every vitest project, the built site in a real browser included.
 * The last line says "N passed, N failed"; the exit code is 0 only when nothing failed.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

let passed = 0;
let failed = 0;

/** Runs one check whose exit code is its verdict. */
function check(name: string, command: string, args: string[]): boolean {
  console.log(`\n== ${name}`);
  const { status } = spawnSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
  });
  if (status === 0) passed += 1;
  else failed += 1;
  console.log(`${status === 0 ? 'passed' : 'FAILED'}: ${name}`);
  return status === 0;
}

check('lint', 'biome', ['check', '--error-on-warnings']);
check('types of pages, components and all of src and tests', 'astro-check', ['--minimumFailingSeverity', 'warning']);
const built = check('the demo household builds', 'node', ['src/cli/build.ts']);

if (built) {
  const folder = mkdtempSync(join(tmpdir(), 'idle-test-'));
  const report = join(folder, 'report.json');
  console.log('\n== tests');
  const { status } = spawnSync(
    'vitest',
    [
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { stdio: 'inherit' },
  );
  try {
    const { numPassedTests, numTotalTests } = JSON.parse(readFileSync(report, 'utf8'));
    passed += numPassedTests;
    failed += numTotalTests - numPassedTests;
  } catch {
    failed += 1;
  }
  if (status !== 0 && failed === 0) failed += 1;
  rmSync(folder, { recursive: true, force: true });
}

console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
