import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFolder } from '../../src/content/read-folder.ts';
import { addDays, weekdayOf } from '../../src/planner/dates.ts';
import type { Machine } from '../../src/planner/household.ts';
import { planSeason } from '../../src/planner/plan.ts';
import type { SeasonPlan } from '../../src/planner/season-plan.ts';
import { windowsOf } from '../../src/planner/tasks/index.ts';

const PROJECT = join(import.meta.dirname, '../..');

/** The yard of four machines; Heron rests from 24 October 2026 to 17 April 2027. */
function yard(asOf: string, change: (heron: Machine) => Partial<Machine> = () => ({})): SeasonPlan {
  const { household } = readFolder(join(PROJECT, 'tests/walks/households/yard'), {
    asOf,
    procedures: join(PROJECT, 'content/procedures'),
    library: join(PROJECT, 'public/climate/normals.json'),
  });
  const machines = household!.machines.map((m) => (m.id === 'heron' ? { ...m, ...change(m) } : m));
  return planSeason({ ...household!, machines }, { asOf, quick: true }).plan;
}

const heronOf = (plan: SeasonPlan) => plan.machines.find((m) => m.id === 'heron')!;
const layUpOf = (plan: SeasonPlan) => heronOf(plan).steps.filter((s) => s.phase === 'lay-up');
const sessionsOf = (plan: SeasonPlan) =>
  plan.sessions.filter((s) => s.steps.some(({ machine }) => machine === 'heron'));
const all = (on: string) => () => ({ doneSteps: [{ stepId: 'lay-up', date: on }] });

test('a first plan made in the middle of the lay-up holds no session of a day gone by', () => {
  for (const asOf of ['2026-10-24', '2026-11-03', '2026-11-14', '2026-12-20', '2027-02-10']) {
    const plan = yard(asOf);
    expect(sessionsOf(plan).length, asOf).toBeGreaterThan(0);
    expect(sessionsOf(plan).filter(({ date }) => date < asOf)).toEqual([]);
    expect(plan.events.filter((e) => /^Lay up Heron/.test(e.title) && e.date < asOf)).toEqual([]);
    expect(heronOf(plan).layUp.done >= asOf).toBe(true);
  }
});

test('a lay-up that was due and is not ticked is overdue: on the step, the page, the reminder', () => {
  const asOf = '2026-12-01';
  const plan = yard(asOf);
  const overdue = layUpOf(plan).filter((s) => s.overdue !== undefined);
  expect(overdue.length).toBeGreaterThan(20);
  for (const step of overdue) expect(step.overdue! < asOf).toBe(true);
  const warning = heronOf(plan).warnings.find((w) => w.about === 'overdue')!;
  expect(warning).toMatchObject({ level: 'warning', machine: 'heron' });
  expect(warning.text).toMatch(/^\d+ steps of Heron's lay-up are overdue, the first since .* not ticked/);
  expect(warning.act).toMatch(
    /^Do it (today|as soon as you can: .* is December \d+, 2026)\..* say so under "Done and measured" .* as "lay-up" under "done"/,
  );
  const [first] = plan.events.filter((e) => /^Lay up Heron/.test(e.title));
  expect(first!.title).toContain(', overdue: ');
  expect(first!.text).toMatch(/It was due by .*: do it now, tick what is done/);
});

test('before its last day nothing is overdue', () => {
  const plan = yard('2026-11-01');
  expect(layUpOf(plan).filter((s) => s.overdue !== undefined)).toEqual([]);
  expect(heronOf(plan).warnings.filter((w) => w.about === 'overdue')).toEqual([]);
});

test('a lay-up ticked as a whole is laid up since that day, and nothing of it is planned', () => {
  const plan = yard('2026-12-01', all('2026-11-14'));
  expect(layUpOf(plan).every((s) => s.done && s.date === '2026-11-14')).toBe(true);
  expect(heronOf(plan).layUp).toEqual({ start: '2026-11-14', done: '2026-11-14', complete: true });
  expect(plan.events.filter((e) => /^Lay up Heron/.test(e.title))).toEqual([]);
  expect(heronOf(plan).warnings.filter((w) => /overdue|record/.test(w.about))).toEqual([]);
  // What it changed is still to be put right in spring.
  expect(plan.ledger.filter((item) => item.machine === 'heron').length).toBeGreaterThan(5);
});

test('no lay-up step is planned once the start-up has begun: it is said, and left to the start-up sheet', () => {
  const early = (heron: Machine) => ({ doneSteps: [{ stepId: 'wash.wash', date: heron.season.lastUse }] });
  for (const change of [() => ({}), early]) {
    const asOf = '2027-04-03';
    const plan = yard(asOf, change);
    const left = layUpOf(plan).filter((s) => !s.done && s.latest! < asOf);
    expect(left.length).toBeGreaterThan(20);
    expect(left.filter((s) => s.date !== undefined || s.overdue !== undefined)).toEqual([]);
    expect(plan.events.filter((e) => /^Lay up Heron|Heron: .*lay-up/.test(e.title))).toEqual([]);
    const note = heronOf(plan).warnings.find((w) => w.about === 'overdue' && w.level === 'note')!;

    expect(note.text).toContain("of Heron's lay-up were never ticked");
    // All that they would have changed stands on the start-up sheet.
    const closed = heronOf(plan).steps.flatMap((s) => (s.phase === 'start-up' ? s.closes : []));
    expect(closed).toEqual(expect.arrayContaining(left.flatMap((s) => s.opens)));
  }
});

test('what has time until the first use is not given up with the lay-up', () => {
  const plan = yard('2027-04-03');
  const away = layUpOf(plan).filter((s) => s.latest === '2027-04-17');
  expect(away.length).toBeGreaterThan(0);
  expect(away.every((s) => s.date !== undefined && s.date <= '2027-04-17')).toBe(true);
});

test('winter work that is late is planned up to the first use, and after it only where it was begun', () => {
  const winter = (plan: SeasonPlan) => heronOf(plan).steps.filter((s) => s.phase === 'winter' && !s.done);
  const { startUpFrom } = windowsOf({ lastUse: '2026-10-24', firstUse: '2027-04-17', proposed: false, reasons: [] });
  const late = yard(addDays(startUpFrom, 3));
  expect(winter(late).some((s) => s.overdue !== undefined && s.date !== undefined)).toBe(true);
  expect(
    heronOf(late)
      .warnings.map((w) => w.text)
      .join(),
  ).toMatch(/of Heron's winter work (is|are) overdue/);
  expect(winter(yard('2027-04-20')).filter((s) => s.date !== undefined)).toEqual([]);
  const begun = () => ({ doneSteps: [{ stepId: 'strip.off.saddle', date: '2027-03-01' }] });
  expect(winter(yard('2027-04-20', begun)).some((s) => s.date !== undefined)).toBe(true);
});

test('the first ride is the first use, on that day, whatever the record says; the re-check comes after it', () => {
  for (const [asOf, change] of [
    ['2026-11-01', () => ({})],
    ['2027-04-11', all('2026-11-14')],
    ['2027-04-11', () => ({ doneSteps: [{ stepId: 'start-up-fuel.fresh', date: '2027-04-10' }] })],
  ] as const) {
    const plan = yard(asOf, change);
    const ride = heronOf(plan).steps.filter((s) => s.stage === 'first-ride');
    const days = Object.fromEntries(ride.map((s) => [s.id.split('.')[1], s.date]));
    expect(days).toMatchObject({ 'walking-pace': '2027-04-17', loop: '2027-04-17' });
    expect(days.recheck! > '2027-04-17').toBe(true);
    const first = plan.events.find((e) => e.title === 'Heron: first use after the rest')!;
    expect(first.date).toBe('2027-04-17');
    expect(first.text).toContain('A short loop near home');
    const recheck = plan.events.find((e) => e.title === 'Heron: re-check after the first ride')!;
    expect(recheck.date).toBe(days.recheck);
    expect(recheck.text).not.toContain('A short loop near home');
  }
});

test('sessions of the same work are told apart by what is done in them', () => {
  const titles = yard('2026-10-20').events.flatMap((e) => (/^(Lay|Start) up /.test(e.title) ? [e.title] : []));
  const what = titles.map((title) => title.replace(/: [^:]*$|: \d+ [ap]m.*$/, ''));
  expect(new Set(what).size).toBe(what.length);
  const bramble = titles.filter((title) => title.startsWith('Lay up Bramble'));
  expect(bramble.length).toBeGreaterThan(1);
  for (const title of bramble) expect(title).toMatch(/^Lay up Bramble \([a-z].*\)(, overdue)?: /);
});

test('look-ins fall on days on which the household has hours', () => {
  const days = yard('2026-10-20').machines.flatMap((m) =>
    m.steps.flatMap((s) => (s.phase === 'look-in' && s.date !== undefined ? [s.date] : [])),
  );
  expect(days.length).toBeGreaterThan(20);
  expect([...new Set(days.map(weekdayOf))].filter((day) => !['saturday', 'sunday', 'thursday'].includes(day))).toEqual(
    [],
  );
});

test('the end of the lay-up is no wall: what is late in it runs on instead of not fitting', () => {
  const asOf = '2026-11-14';
  const plan = yard(asOf);
  const late = layUpOf(plan).filter((s) => s.latest === asOf);
  expect(late.length).toBeGreaterThan(10);
  expect(late.every((s) => s.date !== undefined)).toBe(true);
  expect(plan.misfits.filter((m) => m.before === asOf)).toEqual([]);
});

test('the fuel that was drained has one reminder on its last day, and none once it is used up', () => {
  const titles = (plan: SeasonPlan) =>
    plan.events.map((e) => e.title).filter((t) => /drained/.test(t) && /Heron/.test(t));
  const before = titles(yard('2026-11-20')).filter((t) => t.endsWith('today at the latest'));
  expect(before).toHaveLength(1);
  expect(titles(yard('2026-11-20', all('2026-11-14')))).toEqual([]);
});

test('the start-up begins with its first session, and the machine is ready with its last', () => {
  for (const machine of yard('2026-10-20').machines) {
    const days = machine.steps
      .filter((s) => s.phase === 'start-up' && s.stage !== 'first-ride' && s.stage !== 'paperwork')
      .flatMap(({ date }) => date ?? [])
      .sort();
    const { start, ready, firstUse } = machine.startUp;
    expect(start <= days[0]!).toBe(true);
    expect(ready >= days.at(-1)!).toBe(true);
    expect(ready <= firstUse).toBe(true);
  }
});
