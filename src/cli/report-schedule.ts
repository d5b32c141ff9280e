/**
 * Prints how the agenda's scheduler does on the published instances with known optima, each given as one long day.
 *
 *   npx node src/cli/report-schedule.ts
 */
import { publishedResults } from './schedule-instances.ts';

const results = publishedResults();
const ratios = results.map((r) => r.makespan / r.optimum);
const mean = ratios.reduce((sum, r) => sum + r, 0) / ratios.length;

console.log('instance   optimum  found  ratio');
for (const { name, optimum, makespan } of results) {
  const ratio = (makespan / optimum).toFixed(3);
  console.log(`${name.padEnd(10)} ${String(optimum).padStart(7)}  ${String(makespan).padStart(5)}  ${ratio}`);
}
console.log(
  `\n${results.length} instances: mean ratio ${mean.toFixed(4)}, worst ${Math.max(...ratios).toFixed(3)}, optimal ${
    results.filter((r) => r.makespan === r.optimum).length
  }`,
);
