/** Everything that a plan says of electric machines, word by word: steps, warnings, reasons, reminders, what a longer season costs. */
import { expect, test } from 'vitest';
import { KINDS } from '../../../src/content/kinds.ts';
import type { Household } from '../../../src/planner/household.ts';
import { planSeason } from '../../../src/planner/plan.ts';
import { readWith } from '../../content/helpers.ts';
import { BURNING } from '../tasks/burning.ts';
import { library } from '../tasks/library.ts';
import { slipsIn } from './slips.ts';

/** Names, lines of files and addresses are no speech. */
const NO_SPEECH =
  /^(?:id|uid|path|settle|method|field|step|after|opens|closes|item|openedBy|closedBy|about|stage|cautions)$/;

/** A household with one electric machine, with or without electricity where it stands; as the place has it where nothing is said. */
function alone(lines: string, power?: boolean): Household {
  const { household, problems } = readWith({
    'machines/own.yaml': `name: Own\nplace: tin-shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\nengine: { cycle: electric }\n${lines}`,
  });
  expect(problems).toEqual([]);
  const places = household!.places.map((place) => ({ ...place, power: power ?? place.power }));
  const machines = household!.machines.filter(({ id }) => id === 'own');
  return { ...household!, machines, places, procedures: library() };
}

function* spoken(value: unknown, field = ''): Generator<string> {
  if (NO_SPEECH.test(field)) return;
  if (typeof value === 'string') yield value;
  else if (Array.isArray(value)) for (const one of value) yield* spoken(one, field);
  else if (typeof value === 'object' && value !== null)
    for (const [name, one] of Object.entries(value)) yield* spoken(one, name);
}

const SAID = {
  bare: '',
  'with a small battery, coolant and salt':
    'battery: { chemistry: agm, capacity: 20 Ah }\ncooling: liquid\nroadSalt: { exposed: true }\ndriveBattery: { removable: false }\n',
  'with lead–acid': 'battery: none\ndriveBattery: { chemistry: lead-acid, removable: true }\n',
};

test.each(Object.entries(SAID))(
  'a household of electric machines, %s, is told nothing of combustion engines',
  (_, said) => {
    const machines = Object.fromEntries(
      KINDS.map((kind) => [
        `machines/e-${kind}.yaml`,
        `name: The ${kind}\nkind: ${kind}\nplace: tin-shed\nlastUse: "2026-10-25"\nfirstUse: "2027-04-10"\nengine: { cycle: electric }\n${said}`,
      ]),
    );
    const { household, problems } = readWith(machines);
    expect(problems).toEqual([]);
    const electric = household!.machines.filter(({ id }) => id.startsWith('e-'));
    expect(electric).toHaveLength(KINDS.length);
    const { plan, problems: unsafe } = planSeason(
      { ...household!, machines: electric, procedures: library() },
      { asOf: '2026-10-01' },
    );
    expect(unsafe).toEqual([]);
    expect(slipsIn(plan)).toEqual([]);
    const { machines: plans, events, warnings, supplies, misfits, ledger } = plan;
    const texts = [...new Set(spoken({ plans, events, warnings, supplies, misfits, ledger }))];
    expect(texts.length).toBeGreaterThan(500);
    expect(texts.filter((text) => BURNING.test(text))).toEqual([]);
  },
);

// What happened to a battery over the rest shows before it is charged: common practice, as fire brigades advise.
test.each([
  ['with', true, 'start-up-drive-charge.lithium'],
  ['without', false, 'start-up-drive-charge.lithium-elsewhere'],
])(
  'a drive battery %s electricity is charged on no day before its look, and on none where its look has none',
  (_, power, id) => {
    const household = alone('kind: motorcycle\n', power);
    const days = ['2026-12-01', '2027-04-08', '2027-04-09', '2027-04-10', '2027-04-11', '2027-04-20'].map((asOf) => {
      const { plan } = planSeason(household, { asOf, quick: true });
      const dayOf = (name: string) => plan.machines[0]!.steps.find((step) => step.id === name)!.date;
      return { asOf, look: dayOf('start-up-drive-battery.look'), charge: dayOf(id) };
    });
    expect(days.some(({ look, charge }) => look !== undefined && charge !== undefined && look > '2027-04-09')).toBe(
      true,
    );
    expect(days.filter(({ look = '9', charge = '9' }) => charge < look)).toEqual([]);
  },
);

// Charging takes hours, most often a night; a machine is ridden once its battery is full: common practice.
test('the first use waits for the day after the charge of the drive battery, however late the start-up is', () => {
  const household = alone('kind: scooter\ndriveBattery: { chemistry: lead-acid, removable: true }\n', true);
  const late = ['2027-04-08', '2027-04-10', '2027-04-12'].flatMap((asOf) => {
    const { plan } = planSeason(household, { asOf, quick: true });
    const { steps, startUp } = plan.machines[0]!;
    const dayOf = (id: string) => steps.find((step) => step.id === id)!.date;
    const charge = dayOf('start-up-drive-charge.lead');
    if (charge === undefined) return [];
    expect(charge < startUp.firstUse, asOf).toBe(true);
    expect(dayOf('start-up-electric-ride.loop'), asOf).toBe(startUp.firstUse);
    const first = plan.events.filter(({ title }) => /first use after the rest/.test(title));
    expect(first.map(({ date }) => date)).toEqual([startUp.firstUse]);
    return charge > '2027-04-09' ? [charge] : [];
  });
  expect(late.length).toBeGreaterThan(0);
});

// Where there is no socket a battery is carried to one: by the words themselves. A charge takes a night: common practice.
test.each([
  ['with a socket', true, ['drive-battery.full', 'drive-battery.out-lead']],
  ['without a socket', false, ['drive-battery.out-lead', 'drive-battery.full-away']],
  ['without a socket', false, ['start-up-drive-battery.full-away', 'start-up-drive-battery.fit-lead']],
])('a drive battery of lead beside a machine %s is charged where it can be', (_, power, [first, then]) => {
  const household = alone('kind: scooter\ndriveBattery: { chemistry: lead-acid, removable: true }\n', power);
  const { plan } = planSeason(household, { asOf: '2026-10-01', quick: true });
  const at = (id: string | undefined) =>
    plan.sessions.flatMap(({ date, start, steps }) =>
      steps.some(({ step }) => step === id) ? [Date.parse(`${date}T${start}Z`)] : [],
    )[0]!;
  const charge = /full/.test(first!) ? 8 * 3.6e6 : 0;
  expect(at(then) - at(first)).toBeGreaterThanOrEqual(charge);
  expect(plan.machines[0]!.steps.some(({ id }) => id === 'start-up-drive-charge.lead')).toBe(power);
});

test('a lithium drive battery beside a machine without a socket comes out for its charge, and is locked in again', () => {
  const household = alone('kind: motorcycle\ndriveBattery: { chemistry: lithium-ion, removable: true }\n', false);
  const { plan } = planSeason(household, { asOf: '2026-10-01', quick: true });
  const charges = plan.machines[0]!.steps.filter(({ id }) => id.startsWith('start-up-drive-charge.'));
  expect(charges.map(({ id, date, doNotRide }) => [id, date, doNotRide])).toEqual([
    ['start-up-drive-charge.lithium-away', '2027-04-09', 'The drive battery is loose or its lock does not shut.'],
  ]);
});

// Positive first, negative last, and a battery that comes out is charged before it is connected: common practice.
test('the small battery of an electric machine is connected after it was charged', () => {
  const household = alone(
    'kind: motorcycle\nbattery: { chemistry: agm, capacity: 5 Ah, care: visits, connected: false }\n',
  );
  const { plan } = planSeason(household, { asOf: '2026-10-01', quick: true });
  const order = plan.machines[0]!.steps.map(({ id }) => id);
  const charge = order.findIndex((id) => /^start-up-electric-battery\.full/.test(id));
  const connect = order.findIndex((id) => /\.connect$/.test(id));
  expect(charge).toBeGreaterThan(-1);
  expect(connect).toBeGreaterThan(charge);
});
