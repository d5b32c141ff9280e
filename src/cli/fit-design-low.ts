/*
 * Fits the depth of the coldest to be reckoned with to published 50-year lows, and prints its constants.
 *
 *   node src/cli/fit-design-low.ts tests/published/design-low.json tests/published/design-low-south.json
 *
 * Fits to the stations with an even number; the others are left to check it.
 */
import { readFileSync } from 'node:fs';
import { fitDepth, fitOpenSouth, type StationLow } from './climate/design-low-fit.ts';

const [everywhere, south] = process.argv.slice(2);
if (everywhere === undefined || south === undefined)
  throw new Error('found fewer than two files, expected the stations of the world, then those south of the plains');
const evenOf = (file: string): StationLow[] => {
  const { stations } = JSON.parse(readFileSync(file, 'utf8')) as { stations: (StationLow & { id: string })[] };
  return stations.filter(({ id }) => Number(id.at(-1)) % 2 === 0);
};

const fit = fitDepth(evenOf(everywhere));
console.log(`baseK      ${(fit.baseK + fit.marginK).toFixed(2)}, of which ${fit.marginK.toFixed(2)} margin`);
for (const name of ['perRange', 'perLead', 'perDegree', 'perAway'] as const)
  console.log(`${name.padEnd(10)} ${fit[name].toFixed(3)}`);
console.log(`left       ${fit.leftK.toFixed(2)} K, root of the mean square, before the margin`);
const { worstK, typicalK } = fitOpenSouth(evenOf(south));
console.log(`worstK     ${worstK.toFixed(2)}\ntypicalK   ${typicalK.toFixed(2)}`);
