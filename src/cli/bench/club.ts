/** Content of a club with as many machines as wanted: the demo household's five, over and over, under other names. */
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT } from '../paths.ts';

const DEMO = join(PROJECT, 'content');

/** Two helpers who come four times a week, and six chargers. */
const HALL = `id: bench-club
name: Bench club
timeZone: America/Edmonton
units: metric
hours: { monday: 4, tuesday: 4, thursday: 4, saturday: 8, sunday: 8 }
hands: 2
chargers:
${[1, 2, 3, 4, 5, 6].map((n) => `  - { id: charger-${n}, name: Charger ${n}, current: ${n % 2 ? '0.8 A' : '1.2 A'}, chemistries: [flooded, agm] }`).join('\n')}
fuelCare: { stabiliserDose: 4 mL/L, can: 20 L, cans: 10 }
revised: "2026-11-25T07:00:00Z"
seed: 20
`;

/**
 * Writes a content folder.
 * @param folder - made when it is not there
 * @param machines - how many
 */
export function writeClub(folder: string, machines: number): void {
  mkdirSync(join(folder, 'machines'), { recursive: true });
  for (const part of ['places', 'climates']) cpSync(join(DEMO, part), join(folder, part), { recursive: true });
  writeFileSync(join(folder, 'household.yaml'), HALL);
  const demo = readdirSync(join(DEMO, 'machines'))
    .sort()
    .map((file) => ({ id: file.replace('.yaml', ''), text: readFileSync(join(DEMO, 'machines', file), 'utf8') }));
  for (let i = 0; i < machines; i++) {
    const { id, text } = demo[i % demo.length]!;
    const own = text.replace(/^name: .*$/m, (line) => `${line.replace(/\s*#.*$/, '')} ${i + 1}`);
    writeFileSync(join(folder, 'machines', `${id}-${i + 1}.yaml`), own);
  }
}
