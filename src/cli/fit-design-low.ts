/*
 * Fits the depth of the coldest to be reckoned with to published 50-year lows, and prints its constants.
 *
 *   node src/cli/fit-design-low.ts tests/published/design-low.json
 *
 * Fits to the stations with an even number; the others are left to check it.
 */
import { readFileSync } from 'node:fs';
import { fitDepth, type StationLow } from './climate/design-low-fit.ts';

/** Of the stations that are fitted to, this share is to get a low at or under the published one. */
const SAFE_SHARE = 0.9;

const [file] = process.argv.slice(2);
if (file === undefined)
  throw new Error('found no file, expected one with stations, such as tests/published/design-low.json');
const { stations } = JSON.parse(readFileSync(file, 'utf8')) as { stations: (StationLow & { id: string })[] };
const fit = fitDepth(stations.filter(({ id }) => Number(id.at(-1)) % 2 === 0));
const margin = fit.marginK(SAFE_SHARE);
console.log(`base          ${(fit.baseK + margin).toFixed(2)} K, of which ${margin.toFixed(2)} K margin`);
for (const name of ['perRange', 'perLead', 'perDegree', 'perAway'] as const)
  console.log(`${name.padEnd(13)} ${fit[name].toFixed(3)}`);
console.log(`left          ${fit.leftK.toFixed(2)} K (root of the mean square, before the margin)`);
