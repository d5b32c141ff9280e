/**
 * `npm run new`: writes a commented machine file from a few answers. Never overwrites.
 *
 * Every question can be answered beforehand: npm run new -- --content ../my-garage --name Juniper --kind motorcycle --place tin-shed …
 * An empty answer leaves the line out; the plan then assumes it and says so.
 */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { createInterface } from 'node:readline';
import { checkField } from '../content/check.ts';
import { slug } from '../content/files.ts';
import { machine } from '../content/schemas/machine.ts';
import { writeMachine } from '../content/write.ts';
import { contentFolder, PROJECT, readCommandLine, stop } from './paths.ts';

type Key =
  | 'name'
  | 'kind'
  | 'place'
  | 'lastUse'
  | 'firstUse'
  | 'chemistry'
  | 'capacity'
  | 'delivery'
  | 'tank'
  | 'blend'
  | 'tap'
  | 'cooling';

interface Question {
  key: Key;
  path: string[];
  text: string;
  needed?: boolean;
}

const QUESTIONS: readonly Question[] = [
  { key: 'name', path: ['name'], text: 'What do you call it?', needed: true },
  {
    key: 'kind',
    path: ['kind'],
    text: 'What is it? motorcycle, scooter, snow-machine, quad, side-by-side, car, tractor, mower',
    needed: true,
  },
  { key: 'place', path: ['place'], text: 'Where does it rest?', needed: true },
  { key: 'lastUse', path: ['lastUse'], text: 'Last day of use before the rest, such as 2026-10-25' },
  { key: 'firstUse', path: ['firstUse'], text: 'First day of use after it, such as 2027-04-10' },
  {
    key: 'chemistry',
    path: ['battery', 'chemistry'],
    text: 'Battery: flooded, flooded-calcium, agm, gel, lifepo4; or none',
  },
  { key: 'capacity', path: ['battery', 'capacity'], text: 'Its capacity from the label, such as 12 Ah' },
  { key: 'delivery', path: ['fuel', 'delivery'], text: 'Fuel by carburettor or injection; or none' },
  { key: 'tank', path: ['fuel', 'tank'], text: 'Room in the tank, such as 17 L or 4.5 US gal' },
  { key: 'blend', path: ['fuel', 'blend'], text: 'Ethanol in the fuel: E0, E5, E10, E15, E20, E85' },
  { key: 'tap', path: ['fuel', 'tap'], text: 'Fuel tap: vacuum, manual, none' },
  { key: 'cooling', path: ['cooling'], text: 'Cooled by air, oil, liquid, none' },
];

const { values } = readCommandLine(
  ['content'],
  Object.fromEntries(QUESTIONS.map((q) => [q.key, { type: 'string' as const }])),
);
const folder = contentFolder();
const places = existsSync(join(folder, 'places'))
  ? readdirSync(join(folder, 'places'))
      .filter((f) => f.endsWith('.yaml'))
      .map((f) => f.slice(0, -'.yaml'.length))
  : [];

const lines = createInterface({ input: process.stdin });
const typed = lines[Symbol.asyncIterator]();
const answers: Partial<Record<Key, string | undefined>> = {};

for (const question of QUESTIONS) {
  if (answers.chemistry === 'none' && question.key === 'capacity') continue;
  if (answers.delivery === 'none' && ['tank', 'blend', 'tap'].includes(question.key)) continue;
  if (answers.delivery === 'injection' && question.key === 'tap') continue;
  answers[question.key] = await ask(question);
}
lines.close();

const file = join(folder, 'machines', `${slug(answers.name!)}.yaml`);
const text = writeMachine(
  {
    name: answers.name!,
    kind: answers.kind!,
    place: answers.place!,
    lastUse: answers.lastUse,
    firstUse: answers.firstUse,
    battery: answers.chemistry === 'none' ? false : { chemistry: answers.chemistry, capacity: answers.capacity },
    fuel:
      answers.delivery === 'none'
        ? false
        : { delivery: answers.delivery, tank: answers.tank, blend: answers.blend, tap: answers.tap },
    cooling: answers.cooling,
  },
  relative(dirname(file), join(PROJECT, 'public', 'schemas', 'machine.schema.json')).replaceAll('\\', '/'),
);
mkdirSync(dirname(file), { recursive: true });
try {
  writeFileSync(file, text, { flag: 'wx' });
} catch (error) {
  if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  stop(
    `${relative(process.cwd(), file)} is there already and was left as it is. Give the machine another name, or edit that file.`,
  );
}
console.log(
  `\nWrote ${relative(process.cwd(), file)}. Open it, and run: npm start${process.env.IDLE_CONTENT === undefined ? '' : ` -- --content ${process.env.IDLE_CONTENT}`}`,
);

async function ask(question: Question): Promise<string | undefined> {
  const given = values[question.key];
  if (typeof given === 'string') {
    const wrong = problemWith(question, given);
    if (wrong) stop(`--${question.key}: ${wrong}`);
    return given;
  }
  const hint = question.key === 'place' && places.length > 0 ? ` ${places.join(', ')}` : '';
  for (;;) {
    process.stdout.write(`${question.text}${hint}${question.needed ? '' : ' (Enter: leave out)'}\n> `);
    const next = await typed.next();
    const answer = next.done ? '' : next.value.trim();
    if (answer === '' && !question.needed) return undefined;
    const wrong = answer === '' ? 'found nothing, expected an answer.' : problemWith(question, answer);
    if (!wrong) return answer;
    if (next.done) stop(`${question.key}: ${wrong}`);
    console.log(wrong);
  }
}

function problemWith(question: Question, answer: string): string | undefined {
  if (answer === 'none' && ['chemistry', 'delivery'].includes(question.key)) return undefined;
  if (question.key === 'place' && places.length > 0 && !places.includes(answer))
    return `found "${answer}", expected one of ${places.join(', ')}.`;
  if (question.key === 'firstUse' && answers.lastUse !== undefined && answer <= answers.lastUse)
    return `found ${answer}, expected a day after ${answers.lastUse}.`;
  return checkField(machine, question.path, answer);
}
