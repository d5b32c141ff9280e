/**
 * `npm run new`: writes a commented machine file from a few answers; in a new folder the household and a place before it. Never
 * overwrites.
 *
 * Every question can be answered beforehand: npm run new -- --content ../my-garage --name Juniper --kind motorcycle --place tin-shed …
 * An empty answer leaves the line out; the plan then assumes it and says so.
 */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { slug } from '../content/ids.ts';
import { ROAD_KINDS } from '../content/kinds.ts';
import { household } from '../content/schemas/household.ts';
import { machine } from '../content/schemas/machine.ts';
import { place } from '../content/schemas/place.ts';
import { type HouseholdAnswers, writeHousehold, writeMachine, writePlace } from '../content/write.ts';
import { ENCLOSURES } from '../planner/storage/index.ts';
import { asker } from './new/ask.ts';
import { HOUSEHOLD, MACHINE, PLACE, pairOf } from './new/questions.ts';
import { contentFolder, PROJECT, readCommandLine, stop } from './paths.ts';

const { values } = readCommandLine(
  ['content'],
  Object.fromEntries([...HOUSEHOLD, ...PLACE, ...MACHINE].map((q) => [q.key, { type: 'string' as const }])),
);
const folder = contentFolder();
const { ask, close } = asker(values);

if (!existsSync(join(folder, 'household.yaml'))) await newHousehold();
const places = placesOf(folder);
const only = places.length === 0 ? await newPlace() : undefined;
await newMachine();
close();

async function newHousehold(): Promise<void> {
  const answers = await ask(HOUSEHOLD, { schema: household });
  const device = Intl.DateTimeFormat().resolvedOptions();
  const name = answers.household!;
  const { charger } = answers;
  write(
    'household',
    join(folder, 'household.yaml'),
    (schema) =>
      writeHousehold(
        {
          id: slug(name),
          name,
          timeZone: device.timeZone,
          locale: device.locale,
          units: answers.units as HouseholdAnswers['units'],
          charger: charger === undefined || charger === 'none' ? undefined : { current: charger, maintainer: false },
        },
        schema,
      ),
    `Its time zone is that of this computer, ${device.timeZone}.`,
  );
}

async function newPlace(): Promise<string> {
  const answers = await ask(PLACE, {
    schema: place,
    choices: { enclosure: ENCLOSURES.map(({ id }) => id), power: ['yes', 'no'] },
    wrong: (key, answer) =>
      key === 'near' && !(pairOf(answer).length === 2 && pairOf(answer).every(Number.isFinite))
        ? `found "${answer}", expected degrees of latitude and longitude, such as 46.8, -92.1.`
        : undefined,
  });
  const id = slug(answers.place!);
  write('place', join(folder, 'places', `${id}.yaml`), (schema) =>
    writePlace(
      {
        name: answers.place!,
        enclosure: answers.enclosure!,
        power: answers.power?.toLowerCase() === 'yes',
        climate: { near: pairOf(answers.near!) },
      },
      schema,
    ),
  );
  return id;
}

async function newMachine(): Promise<void> {
  const answers = await ask(MACHINE, {
    schema: machine,
    asks: (key, { kind, chemistry, cycle, delivery }) =>
      !(
        (key === 'twoStrokeOil' && cycle !== 'two-stroke') ||
        (key === 'place' && only !== undefined) ||
        (key === 'capacity' && chemistry === 'none') ||
        (['tank', 'blend', 'tap', 'cycle'].includes(key) && delivery === 'none') ||
        (key === 'tap' && delivery === 'injection') ||
        (['drive', 'comesOut'].includes(key) && delivery !== 'none') ||
        (key === 'salted' && !ROAD_KINDS.includes(kind!))
      ),
    choices: only === undefined ? { place: places } : {},
    wrong: (key, answer, { lastUse }) =>
      key === 'firstUse' && lastUse !== undefined && answer <= lastUse
        ? `found ${answer}, expected a day after ${lastUse}.`
        : undefined,
  });
  const { name, kind, lastUse, firstUse, chemistry, capacity, delivery, tank, blend, tap, cooling } = answers;
  const electric = delivery === 'none';
  const yes = (answer: string | undefined) => (answer === undefined ? undefined : answer.toLowerCase() === 'yes');
  const driveBattery = electric ? { chemistry: answers.drive, removable: yes(answers.comesOut) } : undefined;
  const salted = yes(answers.salted);
  const battery = chemistry === 'none' ? false : { chemistry, capacity };
  const fuel = electric ? false : { delivery, tank, blend, tap };
  const content = process.env.IDLE_CONTENT;
  write(
    'machine',
    join(folder, 'machines', `${slug(name!)}.yaml`),
    (schema) =>
      writeMachine(
        {
          name: name!,
          kind: kind!,
          place: only ?? answers.place!,
          lastUse,
          firstUse,
          battery,
          driveBattery,
          fuel,
          engine: { cycle: electric ? 'electric' : answers.cycle, twoStrokeOil: answers.twoStrokeOil },
          cooling,
          salted,
        },
        schema,
      ),
    `Open it, and run: npm start${content === undefined ? '' : ` -- --content ${content}`}`,
  );
}

function placesOf(content: string): string[] {
  const own = join(content, 'places');
  if (!existsSync(own)) return [];
  return readdirSync(own)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => file.slice(0, -'.yaml'.length));
}

/** Writes a file that is not there yet, with the way to its schema for the editor. */
function write(kind: string, file: string, textOf: (schema: string) => string, then = ''): void {
  const shown = relative(process.cwd(), file);
  const schema = relative(dirname(file), join(PROJECT, 'public', 'schemas', `${kind}.schema.json`));
  mkdirSync(dirname(file), { recursive: true });
  try {
    writeFileSync(file, textOf(schema.replaceAll('\\', '/')), { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    stop(`${shown} is there already and was left as it is. Give the ${kind} another name, or edit that file.`);
  }
  console.log(`\nWrote ${shown}. ${then}`.trimEnd());
}
