/** Parts of one machine that cannot be as they are written: held against each other, its place and the household. */
import { answerProblems, type Say, type Sound } from './cross-answers.ts';
import type { CrossContext } from './cross-context.ts';
import { FILE_LIMITS, sayBeyond } from './limits.ts';
import { READINGS_OF_NONE } from './records.ts';
import { knownEntries } from './sound.ts';
import { round, type Typed } from './typed.ts';

/** Problems of battery, fuel, engine, cooling, tyres and chassis. */
export function partProblems(m: Sound, context: CrossContext, say: Say, typed: Typed): void {
  answerProblems(m, say, typed);
  sayBeyond(m, m.kind, FILE_LIMITS, say, typed);
  battery(m, context, say);
  driveBattery(m, say);
  fuel(m, say);
  engine(m, say);
  cooling(m, say);
  tyresAndChassis(m, say);
}

function battery(m: Sound, { household, places }: CrossContext, say: Say): void {
  if (m.battery === 'none' && m.readings !== undefined && m.readings.length > 0) say(['readings'], ...READINGS_OF_NONE);
  if (m.battery === undefined || m.battery === 'none') return;
  const b = m.battery;
  if (b.care === 'maintainer') {
    if (m.place !== undefined && places.get(m.place)?.power === false)
      say(
        ['battery', 'care'],
        `found maintainer at "${m.place}", which has no power, expected carry-in or visits`,
        'Write carry-in or visits, or delete the line to let the planner choose.',
      );
    if (household?.isWhole('chargers') && !knownEntries(household.sound.chargers).some(([, c]) => c.maintainer))
      say(
        ['battery', 'care'],
        'found maintainer, and no charger in household.yaml that can stay connected, expected one with maintainer: true',
        'Add the charger to household.yaml, or delete the line.',
      );
  }
  if (b.care === 'carry-in') {
    if (household?.isWhole('batteryRoom') && household.sound.batteryRoom === undefined)
      say(
        ['battery', 'care'],
        'found carry-in, and no batteryRoom in household.yaml, expected one',
        'Add batteryRoom to household.yaml, or delete the line.',
      );
    if (b.removable === false)
      say(
        ['battery', 'care'],
        'found carry-in of a battery with removable: false, expected maintainer or visits',
        'Write another care, or correct removable.',
      );
    if (b.connected === true)
      say(
        ['battery', 'connected'],
        'found connected: true beside care: carry-in, which takes the battery out, expected false',
        'Delete one of the two lines.',
      );
  }
}

function driveBattery(m: Sound, say: Say): void {
  const cycle = m.engine?.cycle;
  if (m.driveBattery === undefined || cycle === 'electric') return;
  say(
    ['driveBattery'],
    `found a drive battery ${cycle === undefined ? 'of a machine that is not said to be electric' : `beside a ${cycle} engine`}, expected an electric machine`,
    'Write engine: { cycle: electric } and fuel: none, or delete the group; a starting battery is called battery.',
  );
}

function fuel(m: Sound, say: Say): void {
  const { cycle, cylinders, twoStrokeOil } = m.engine ?? {};
  if (m.fuel === 'none' && cycle !== undefined && cycle !== 'electric')
    say(
      ['fuel'],
      `found none beside a ${cycle} engine, which burns fuel, expected the fuel`,
      'Describe the fuel or delete the line; where nothing burns, write engine: { cycle: electric }.',
    );
  if (m.fuel === undefined || m.fuel === 'none') return;
  const f = m.fuel;
  if (f.premix !== undefined && twoStrokeOil !== undefined && f.premix !== (twoStrokeOil === 'premix'))
    say(
      ['fuel', 'premix'],
      `found premix: ${f.premix} beside engine.twoStrokeOil: ${twoStrokeOil}, expected ${!f.premix}`,
      'Oil is either mixed into the tank or injected from its own: correct one of the two.',
    );
  if (f.bowls !== undefined && cylinders !== undefined && cylinders > 0 && f.bowls > 2 * cylinders)
    say(
      ['fuel', 'bowls'],
      `found ${f.bowls} float bowls on ${cylinders === 1 ? '1 cylinder' : `${cylinders} cylinders`}, expected at most ${2 * cylinders}`,
      'Correct one of the two.',
    );
  if (m.engine?.cycle === 'electric')
    say(['fuel'], 'found fuel of an electric machine, expected none', 'Write fuel: none, or correct engine.cycle.');
  if (f.tank !== undefined && f.lineAndBowls !== undefined && f.lineAndBowls >= f.tank) {
    say(
      ['fuel', 'lineAndBowls'],
      `found ${round(f.lineAndBowls)} L in line and bowls beside a tank of ${round(f.tank)} L, expected less`,
      'Check the figure and its unit: a bowl holds some 60 mL.',
    );
  }
  if (f.delivery === 'injection' && f.bowls !== undefined && f.bowls > 0)
    say(
      ['fuel', 'bowls'],
      `found ${f.bowls} float bowls on an injected engine, expected none`,
      'Delete the line, or write delivery: carburettor.',
    );
  if (f.delivery === 'carburettor' && f.bowls === 0)
    say(
      ['fuel', 'bowls'],
      'found 0 float bowls on an engine with carburettor, expected at least 1',
      'Correct the number, or write delivery: injection.',
    );
  if (f.tap === 'none' && f.taps !== undefined)
    say(['fuel', 'taps'], `found ${f.taps} taps beside tap: none, expected no number`, 'Delete one of the two lines.');
  if (f.premix && m.engine?.cycle === 'four-stroke')
    say(
      ['fuel', 'premix'],
      'found oil mixed into the fuel of a four-stroke, expected a two-stroke',
      'Delete the line, or correct engine.cycle.',
    );
}

function engine(m: Sound, say: Say): void {
  const e = m.engine;
  if (!e) return;
  if (e.twoStrokeOil !== undefined && e.cycle !== undefined && e.cycle !== 'two-stroke')
    say(
      ['engine', 'twoStrokeOil'],
      `found two-stroke oil on a ${e.cycle} engine, expected a two-stroke`,
      'Delete the line, or correct cycle.',
    );
  if (e.cycle === 'two-stroke' && e.oil !== undefined && e.oil > 0)
    say(
      ['engine', 'oil'],
      'found engine oil to change in a two-stroke, which burns its oil, expected none',
      'Delete the line, or correct cycle.',
    );
  if (e.cycle === 'electric') {
    const burning = { cylinders: e.cylinders, oil: e.oil, oilFilter: e.oilFilter, idleFlow: e.idleFlow };
    for (const [name, value] of Object.entries(burning))
      if (value)
        say(
          ['engine', name],
          `found ${name} of an electric machine, which burns nothing, expected no such line`,
          'Delete the line, or correct cycle.',
        );
  }
  if (e.cycle !== undefined && e.cycle !== 'electric' && e.cylinders === 0)
    say(
      ['engine', 'cylinders'],
      `found 0 cylinders of a ${e.cycle} engine, expected at least 1`,
      'Correct the number.',
    );
}

function cooling(m: Sound, say: Say): void {
  const c = m.cooling;
  if (c === undefined || typeof c === 'string') return;
  const { kind, ...coolant } = c;
  const [first] = Object.keys(coolant);
  if (kind !== undefined && kind !== 'liquid' && first !== undefined)
    say(
      ['cooling', first],
      `found ${first} of an engine cooled by ${kind}, expected kind: liquid`,
      'Delete the line, or write kind: liquid.',
    );
  if (typeof c.strength === 'number' && c.freezesAt !== undefined)
    say(
      ['cooling', 'freezesAt'],
      'found a strength and a freezing point, expected one of them',
      'Keep the one that was read last.',
    );
  if (c.volume !== undefined && c.drainable !== undefined && c.drainable > c.volume)
    say(
      ['cooling', 'drainable'],
      `found ${round(c.drainable)} L to drain from ${round(c.volume)} L, expected no more than the volume`,
      'Correct one of the two.',
    );
}

function tyresAndChassis(m: Sound, say: Say): void {
  for (const [i, t] of knownEntries(m.tyres)) {
    if (t.sidewallMax !== undefined && t.pressure !== undefined && t.sidewallMax < t.pressure)
      say(
        ['tyres', i, 'sidewallMax'],
        `found a sidewall maximum of ${round(t.sidewallMax)} kPa under the normal ${round(t.pressure)} kPa, expected at least that`,
        'Read both again: one stands on the sidewall, the other on the plate or in the handbook.',
      );
    if (t.position !== undefined && m.tyres!.findIndex((o) => o?.position === t.position) !== i)
      say(
        ['tyres', i, 'position'],
        `found "${t.position}" a second time, expected each position once`,
        'Name it differently, or give a count.',
      );
  }
  const c = m.chassis;
  if (c?.brakeFluid !== undefined && (c.brakes === 'cable' || c.brakes === 'none'))
    say(
      ['chassis', 'brakeFluid'],
      `found brake fluid beside brakes: ${c.brakes}, expected hydraulic or mixed brakes`,
      'Delete one of the two lines.',
    );
  if (c?.drive === 'track' && c.track === false)
    say(['chassis', 'track'], 'found track: false beside drive: track, expected true', 'Correct one of the two.');
}
