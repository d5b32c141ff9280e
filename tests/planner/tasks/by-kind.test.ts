/** Each owner is told only of what the kind of machine has: what stands on a sheet can be ticked honestly. */
import { expect, test } from 'vitest';
import { settleSteps } from '../../../src/planner/ledger/index.ts';
import { CAUTIONS, concreteSteps } from '../../../src/planner/tasks/index.ts';
import { type Case, caseOf } from './generate.ts';
import { library } from './library.ts';

const LIBRARY = library();
const KINDS = ['motorcycle', 'scooter', 'snow-machine', 'quad', 'side-by-side', 'car', 'tractor', 'mower'] as const;
type Kind = (typeof KINDS)[number];

const stepsOf = (drawn: Case) => settleSteps(drawn.machine, concreteSteps({ ...drawn, procedures: LIBRARY }));
const textOf = (drawn: Case, phase?: string) =>
  stepsOf(drawn)
    .filter((step) => phase === undefined || step.phase === phase)
    .flatMap(({ id, title, detail, why, doNotRide }) => `${id}: ${[title, detail, why, doNotRide].join(' ')}`);
const USE = { 'snow-machine': 'snow', tractor: 'work', mower: 'work' } as const;
/** A machine of the kind as such machines are built, with track and skis or tyres, and lights. */
function of(kind: Kind, change: Parameters<typeof caseOf>[0] = {}): Case {
  const onSnow = kind === 'snow-machine';
  return caseOf({
    kind,
    use: USE[kind as keyof typeof USE] ?? 'road',
    ...(onSnow ? { tyres: [], drive: 'track' } : {}),
    ...change,
    flags: { lights: kind !== 'mower', track: onSnow, skis: onSnow, ...change.flags },
  });
}

/** What only some kinds have. By definition of the kinds; the rest is common knowledge of how they are built. */
const HAVE: readonly [what: string, words: RegExp, kinds: readonly Kind[]][] = [
  ['a side-stand', /side-stand/, ['motorcycle', 'scooter']],
  ['a grip that snaps shut', /snaps? shut/, ['motorcycle', 'scooter']],
  ['a tether', /tether/i, ['snow-machine']],
  ['handlebars', /\bbars straight|\bbars,|bars free/, ['motorcycle', 'scooter', 'quad', 'snow-machine']],
  ['spokes', /spokes, where it has them/, ['motorcycle', 'scooter']],
  ['indicators', /indicators/, ['motorcycle', 'scooter', 'car']],
  ['a power take-off', /power take-off/, ['tractor']],
  ['a blade', /\bblade/, ['tractor', 'mower']],
  ['a cutter', /cutter/, ['tractor', 'mower']],
  ['skis', /\bskis?\b/i, ['snow-machine']],
  ['a raised track', /[Bb]ehind the track/, ['snow-machine']],
  ['footrests', /footrests, silencer/, ['motorcycle', 'scooter', 'quad']],
  ['a selector', /P or neutral/, ['quad', 'side-by-side', 'car']],
];

test.each(KINDS)('the sheets of a %s speak of nothing that only other kinds have', (kind) => {
  const texts = textOf(of(kind), 'start-up');
  expect(texts.length).toBeGreaterThan(10);
  for (const [what, words, kinds] of HAVE)
    if (kinds.includes(kind)) expect(texts.join('\n'), what).toMatch(words);
    else
      expect(
        texts.filter((text) => words.test(text)),
        what,
      ).toEqual([]);
});

test('an injected engine is told of no choke, float bowl or jet, a carburettor is', () => {
  const fuel = { ...caseOf().machine.fuel!, taps: null };
  const told = (delivery: 'carburettor' | 'injection', bowls: number) =>
    [true, false].flatMap((drain) =>
      textOf(of('car', { fuel: { ...fuel, delivery, bowls }, flags: { drain } })).filter((text) =>
        /[Cc]hoke|\bbowls?\b|\bjets?\b|carburettor/.test(text),
      ),
    );
  expect(told('injection', 0).filter((text) => !text.includes('washer'))).toEqual([]);
  expect(told('carburettor', 1).length).toBeGreaterThan(1);
});

test('a two-stroke has no oil lamp, a four-stroke is stopped by it', () => {
  const lamp = (cycle: 'two-stroke' | 'four-stroke', kind: Kind) =>
    textOf(of(kind, cycle === 'two-stroke' ? { cycle, oilL: 0, twoStrokeOil: 'injected' } : { cycle })).filter((text) =>
      /oil (?:lamp|light)/i.test(text),
    );
  expect(lamp('two-stroke', 'snow-machine')).toEqual([]);
  expect(lamp('four-stroke', 'car').some((text) => text.startsWith('start-up-first-start.start:'))).toBe(true);
});

const BATTERY = { care: 'visits', keptAt: 'machine', connected: false, capacityAh: 12, charges: 1 } as const;

// Sealed lids are not opened; lithium iron phosphate has neither acid nor water that freezes. Common practice.
test('who cannot look into the cells is told of no water, who has no acid of no acid and no frozen battery', () => {
  for (const care of ['visits', 'carry-in', 'maintainer'] as const) {
    const keptAt = care === 'carry-in' ? 'room' : 'machine';
    const told = (chemistry: 'flooded-antimony' | 'flooded-calcium' | 'agm' | 'gel' | 'lifepo4') =>
      stepsOf(caseOf({ battery: { ...BATTERY, care, keptAt, chemistry }, flags: { power: care === 'maintainer' } }));
    const water = (steps: ReturnType<typeof told>) =>
      steps.filter((step) =>
        /distilled|plates covered|[Bb]are plates|caps to its cells|[Ff]looded/.test(`${step.title} ${step.detail}`),
      );
    for (const chemistry of ['flooded-calcium', 'agm', 'gel', 'lifepo4'] as const)
      expect(
        water(told(chemistry)).map(({ id }) => id),
        `${care} ${chemistry}`,
      ).toEqual([]);
    const phases = water(told('flooded-antimony')).map(({ phase }) => phase);
    expect(new Set(phases), care).toEqual(
      new Set(care === 'maintainer' ? ['lay-up', 'look-in', 'start-up'] : ['lay-up', 'start-up']),
    );
    const lithium = told('lifepo4');
    expect(lithium.flatMap(({ cautions }) => cautions)).not.toContain('battery-acid-gas');
    expect(lithium.flatMap(({ cautions }) => cautions)).not.toContain('frozen-battery');
    expect(
      lithium.filter((step) => step.id.includes('battery') && /freeze|frozen|acid/.test(`${step.title} ${step.why}`)),
    ).toEqual([]);
    // One that charges below freezing harms a lithium battery for good.
    for (const step of lithium.filter(({ needs }) => needs.charger))
      expect(step.cautions, step.id).toContain('lithium-cold');
  }
});

test('the starter stud stands where the battery is out, not where the engine is turned by it', () => {
  const steps = stepsOf(caseOf({ battery: { ...BATTERY, chemistry: 'agm', care: 'carry-in', keptAt: 'room' } }));
  expect(steps.filter(({ cautions }) => cautions.includes('starter-stud')).map(({ id }) => id)).toEqual([
    'start-up-battery.fit',
  ]);
  const { detail } = steps.find(({ id }) => id === 'start-up-battery.fit')!;
  expect(detail).toMatch(/starter motor's own stud first, while the battery is still out/);
});

test('papers, keys and insurance are seen to over every rest of a machine of the road, written down or not', () => {
  const ids = (change: Parameters<typeof caseOf>[0]) => stepsOf(caseOf({ papers: [], ...change })).map(({ id }) => id);
  expect(ids({ use: 'road' })).toEqual(
    expect.arrayContaining(['paperwork.put-away', 'start-up-paperwork.back-on-road', 'start-up-paperwork.aboard']),
  );
  for (const change of [{ use: 'snow' }, { use: 'road', restDays: 10 }] as const) {
    expect(ids(change)).not.toContain('paperwork.put-away');
    expect(ids(change)).not.toContain('start-up-paperwork.back-on-road');
  }
});

test('no step names the season in which a rest lies: a snow machine rests in summer, the south turns the year round', () => {
  const named = KINDS.flatMap((kind) =>
    textOf(of(kind)).filter((text) => /\b(?:winter|summer|autumn|in spring|by spring)\b/.test(text)),
  );
  expect(named).toEqual([]);
});

test.each(['four-stroke', 'electric'] as const)(
  'a machine of %s without tyres is asked for no tyre pressure and no wheel nut, one without a track for no track',
  (cycle) => {
    const asked = (kind: Kind, words: RegExp) =>
      textOf(of(kind, { cycle }), 'start-up').filter((text) => words.test(text.replace(/^\S+/, '')));
    expect(asked('snow-machine', /tyre|wheel nut/i)).toEqual([]);
    for (const kind of KINDS) if (kind !== 'snow-machine') expect(asked(kind, /\btracks?\b/i)).toEqual([]);
  },
);

// Cars and side-by-sides are driven, tractors and mowers used: by the words themselves. A mower that is ridden on is a kind of it.
test.each(['car', 'side-by-side', 'tractor', 'mower'] as const)('no sheet of a %s speaks of a ride', (kind) => {
  const told = (['four-stroke', 'electric'] as const).flatMap((cycle) =>
    [{}, { drain: true }, { leave: true }].flatMap((flags) =>
      stepsOf(of(kind, { cycle, flags })).flatMap((step) =>
        [step.part, step.title, step.detail, step.why, step.doNotRide]
          .concat(step.cautions.flatMap((id) => [CAUTIONS.find((row) => row.id === id)?.text]))
          .flatMap((text) => text ?? []),
      ),
    ),
  );
  expect(told.length).toBeGreaterThan(100);
  expect(told.filter((text) => /\b(?:rides?|ridden|riding)\b/i.test(text.replace(/one that is ridden/g, '')))).toEqual(
    [],
  );
});

// A closed bag keeps dry only while it is shut, and gas of a charge must not gather in it: common practice.
test('a look-in opens no bag for the battery; a charge does, and renews the desiccant', () => {
  for (const care of ['visits', 'carry-in'] as const)
    for (const bag of [true, false]) {
      const keptAt = care === 'visits' ? 'machine' : 'room';
      const steps = stepsOf(caseOf({ battery: { ...BATTERY, care, keptAt, chemistry: 'agm' }, flags: { bag } }));
      const read = steps.filter(({ id, reading }) => id.startsWith('look-in.') && reading === 'V');
      expect(read.length).toBeGreaterThan(0);
      const shut = read.filter(({ title }) => /the bag stays shut/.test(title));
      expect(shut).toHaveLength(bag && care === 'visits' ? read.length : 0);
    }
  for (const chemistry of ['agm', 'lifepo4'] as const) {
    const steps = stepsOf(caseOf({ battery: { ...BATTERY, chemistry }, flags: { bag: true } }));
    const charges = steps.filter(({ id }) => id.startsWith('look-in-charge.'));
    expect(charges.length).toBeGreaterThan(0);
    for (const { detail } of charges) expect(detail).toMatch(/bag.*fresh desiccant/);
  }
});

// By what each caution speaks of: petrol and spark of engines that burn, the drive battery of those that do not, acid of lead,
// charging in the cold of lithium, a hot radiator of what has one.
test('a machine is warned of what it has, and of nothing else', () => {
  const told = (drawn: Case) => new Set(stepsOf(drawn).flatMap(({ cautions }) => cautions));
  for (const kind of KINDS) {
    for (const cycle of ['four-stroke', 'two-stroke'] as const) {
      const burning = told(of(kind, { cycle }));
      expect([...burning], kind).toContain('petrol-vapour');
      expect([...burning], kind).toContain('pressure-washer');
      for (const id of ['water-electric', 'blade-electric', 'drive-battery', 'high-voltage'])
        expect([...burning], kind).not.toContain(id);
      expect(burning.has('blade'), kind).toBe(kind === 'mower' || kind === 'tractor');
    }
    const electric = told(of(kind, { cycle: 'electric' }));
    expect([...electric], kind).toContain('water-electric');
    for (const id of ['petrol-vapour', 'pressure-washer', 'blade']) expect([...electric], kind).not.toContain(id);
  }
  expect([...told(of('mower', { cycle: 'electric' }))]).toContain('blade-electric');
  const battery = (chemistry: 'agm' | 'flooded-calcium' | 'lifepo4') =>
    told(caseOf({ battery: { ...BATTERY, chemistry } }));
  for (const lead of ['agm', 'flooded-calcium'] as const) {
    expect([...battery(lead)]).toContain('battery-acid-gas');
    expect([...battery(lead)]).not.toContain('lithium-cold');
  }
  expect([...battery('lifepo4')]).toContain('lithium-cold');
  for (const id of ['battery-acid-gas', 'frozen-battery']) expect([...battery('lifepo4')]).not.toContain(id);
});

// Lead–acid gives off hydrogen and freezes when it is flat, and weighs some 25 to 40 g/Wh: common practice, from memory.
test('a drive battery of lead is warned of as lead is, whatever the small battery beside it', () => {
  for (const power of [true, false])
    for (const removable of [true, false]) {
      const steps = stepsOf(
        of('scooter', {
          cycle: 'electric',
          battery: { ...BATTERY, chemistry: 'lifepo4' },
          driveBattery: { chemistry: 'lead-acid', removable },
          flags: { power },
        }),
      );
      const charging = steps.filter(({ title }) => /drive battery.*charge|charge.*drive battery/i.test(title));
      expect(new Set(charging.map(({ phase }) => phase)).size).toBe(3);
      for (const { id, cautions } of charging)
        expect(cautions, id).toEqual(expect.arrayContaining(['battery-acid-gas', 'frozen-battery']));
      const carried = steps.filter(({ title }) => /take the drive battery out|drive battery in:/i.test(title));
      expect(carried).toHaveLength(removable ? 2 : 0);
      for (const { id, cautions } of carried)
        expect(cautions, id).toEqual(expect.arrayContaining(['battery-acid-gas', 'battery-leads', 'heavy-battery']));
    }
});

// Starting batteries of 60 to 100 Ah weigh 15 to 25 kg, of 180 Ah and more 45 kg and more, of motorcycles 2 to 5 kg: from memory.
test('who carries the battery of a car or a tractor is told of its weight', () => {
  for (const kind of KINDS) {
    const told = stepsOf(of(kind, { battery: { ...BATTERY, chemistry: 'agm', care: 'carry-in', keptAt: 'room' } }))
      .filter(({ cautions }) => cautions.includes('heavy-battery'))
      .map(({ id }) => id);
    expect(told, kind).toEqual(
      ['side-by-side', 'car', 'tractor'].includes(kind) ? ['battery.out', 'start-up-battery.fit'] : [],
    );
  }
});

// A full tank takes nothing, one that is too full for the warmth runs over: by the words themselves.
test.each([
  ['add', ['fuel-fill.premix', 'fuel-fill.fill']],
  ['full', ['fuel-fill.full']],
  ['over', ['fuel-fill.draw-off']],
] as const)('a tank that is filled for its rest is told what it wants: %s', (room, ids) => {
  const fuel = { ...caseOf().machine.fuel!, taps: null, premix: true };
  const steps = stepsOf(caseOf({ room, cycle: 'two-stroke', fuel })).filter(({ id }) => id.startsWith('fuel-fill.'));
  const told = steps.filter(({ id }) => /premix|fill\.fill|full|draw-off/.test(id));
  expect(told.map(({ id }) => id)).toEqual(ids);
  for (const { id, cautions } of told) expect(cautions, id).toContain('petrol-vapour');
  // Stabiliser is for what stays in the tank.
  if (room === 'over')
    expect(steps.map(({ id }) => id).slice(0, 2)).toEqual(['fuel-fill.draw-off', 'fuel-fill.stabilise']);
});
