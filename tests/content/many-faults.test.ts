import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectedOf, FAULTS, faultNames, filesOf, readOver } from '../faults/household.ts';

test('many faults in one household are all reported in one run, by file and line', () => {
  const files = [];
  const expected = [];
  for (const name of faultNames()) {
    const { problems, grow, without } = expectedOf(name);
    const fault = filesOf(join(FAULTS, name)).filter((f) => f.path !== 'expected.json');
    if (grow || without || fault.length !== 1 || fault[0]!.path !== 'machines/bike.yaml') continue;
    files.push({ path: `machines/${name}.yaml`, bytes: fault[0]!.bytes });
    // What is told of the bike's record hangs on the bike, which is sound here.
    const own = problems.filter((p) => p.file === 'machines/bike.yaml');
    expected.push(...own.map((p) => `machines/${name}.yaml:${p.line} ${p.field}`));
  }
  expect(files.length).toBeGreaterThan(60);
  const { household, problems } = readOver(files);
  expect(household).toBeUndefined();
  expect(problems.map((p) => `${p.file}:${p.line} ${p.field}`).sort()).toEqual(expected.sort());
});

test('faults of several kinds in one file are all reported', () => {
  const { problems } = readOver([
    {
      path: 'machines/bike.yaml',
      bytes:
        'name: Bike\nkind: motorcycle\nplace: nowhere\nlastUse: "2027-04-10"\nfirstUse: "2026-10-25"\ncolour: red\nfuel:\n  tank: 17\ncooling: { kind: air, volume: 2 L }\n',
    },
  ]);
  expect(problems.map((p) => `${p.line} ${p.field}`)).toEqual([
    '3 place',
    '5 firstUse',
    '6 colour',
    '8 fuel.tank',
    '9 cooling.volume',
  ]);
});

test('a slip in one field hides no fault of another, and makes none', () => {
  let told = 0;
  let slips = 0;
  for (const name of faultNames()) {
    const { problems: expected, grow, without } = expectedOf(name);
    const [file, ...others] = filesOf(join(FAULTS, name)).filter((f) => f.path !== 'expected.json');
    if (grow || without || others.length > 0 || file?.path !== 'machines/bike.yaml') continue;
    // Byte by byte: some are not UTF-8.
    const text = Buffer.from(file.bytes as Uint8Array).toString('latin1');
    // A slip is a fault of no field; one that stops the whole file from being read is none of these.
    if (!expected.every((p) => p.field === '') || !/^cooling: air$/m.test(text)) continue;
    slips += 1;
    const bytes = Buffer.from(text.replace(/^cooling: air$/m, 'cooling: wine'), 'latin1');
    const { problems } = readOver([{ path: file.path, bytes }]);
    const line = text.slice(0, text.search(/^cooling: air$/m)).split('\n').length;
    const more = problems.filter((p) => !expected.some((e) => e.line === p.line && e.field === p.field));
    expect(problems.length - more.length, name).toBe(expected.length);
    for (const one of more) expect(`${name} ${one.line} ${one.field}`).toBe(`${name} ${line} cooling`);
    told += more.length;
  }
  expect(slips).toBeGreaterThan(20);
  // The rest are slips beside the field itself, and signs for which no file is read.
  expect(told / slips).toBeGreaterThan(0.5);
});
