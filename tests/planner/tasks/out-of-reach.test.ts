/** Batteries that do not come out, at a place without electricity: no step charges them there. */
import { expect, test } from 'vitest';
import { settleSteps } from '../../../src/planner/ledger/index.ts';
import { concreteSteps, machineFacts } from '../../../src/planner/tasks/index.ts';
import { type Case, caseOf } from './generate.ts';
import { library } from './library.ts';

const LIBRARY = library();
type Change = NonNullable<Parameters<typeof caseOf>[0]>;

function builtIn(change: Change, power = false): Case {
  const drawn = caseOf({ ...change, flags: { power } });
  const { machine } = drawn;
  return {
    ...drawn,
    machine: {
      ...machine,
      battery: machine.battery && { ...machine.battery, removable: false },
      driveBattery: machine.driveBattery && { ...machine.driveBattery, removable: false },
    },
  };
}
const stepsOf = (drawn: Case) => settleSteps(drawn.machine, concreteSteps({ ...drawn, procedures: LIBRARY }));
const textOf = ({ title, detail }: { title: string; detail?: string | undefined }) => `${title} ${detail}`;
const BATTERY = { care: 'visits', keptAt: 'machine', connected: false, capacityAh: 12, charges: 0 } as const;
/** What brings machine and electricity together. */
const TOGETHER = /where there is electricity|to electricity/;

test.each(['flooded-antimony', 'flooded-calcium', 'agm', 'gel', 'lifepo4'] as const)(
  'a 12 V battery of %s is charged before the rest and after it, where there is electricity, and not between',
  (chemistry) => {
    for (const care of ['visits', 'maintainer'] as const)
      for (const cycle of ['four-stroke', 'electric'] as const) {
        const drawn = builtIn({
          cycle,
          battery: { ...BATTERY, care, chemistry },
          driveBattery: { chemistry: 'lithium-ion', removable: true },
        });
        const charging = stepsOf(drawn).filter(
          ({ id, needs }) => needs.charger || needs.power || id.includes('maintainer'),
        );
        expect(charging.map(({ phase }) => phase)).toEqual(['lay-up', 'start-up']);
        for (const step of charging) expect(textOf(step)).toMatch(TOGETHER);
        // Nothing can charge it later.
        expect(charging[0]!.latest! <= drawn.machine.season.lastUse).toBe(true);
      }
  },
);

test.each(['lithium-ion', 'lead-acid'] as const)(
  'a drive battery of %s is charged where there is electricity',
  (chemistry) => {
    const own = { cycle: 'electric', battery: undefined, driveBattery: { chemistry, removable: false } } as const;
    const charging = (power: boolean) =>
      stepsOf(builtIn(own, power)).filter(
        (step) =>
          step.id.includes('drive') &&
          /\bcharge (?:it|the drive|to about)/i.test(textOf(step)) &&
          !step.id.endsWith('.look'),
      );
    const away = charging(false);
    expect(new Set(away.map(({ phase }) => phase))).toEqual(new Set(['lay-up', 'look-in', 'start-up']));
    for (const step of away) expect(textOf(step)).toMatch(TOGETHER);
    expect(away.find(({ phase }) => phase === 'lay-up')!.latest).toBe(builtIn(own).machine.season.lastUse);
    // Brakes are tried before the way to the charger.
    const ids = stepsOf(builtIn(own)).map(({ id }) => id);
    const last = away.at(-1)!;
    expect(last.stage).toBe('first-ride');
    expect(ids.indexOf('start-up-electric-ride.walking-pace')).toBeLessThan(ids.indexOf(last.id));
    for (const step of charging(true)) expect(textOf(step)).not.toMatch(TOGETHER);
  },
);

test('a battery that is to stay on a maintainer where there is no electricity is told of none', () => {
  const on = (power: boolean) => {
    const { machine, place, household, parts } = caseOf({
      battery: { ...BATTERY, care: 'maintainer', chemistry: 'agm' },
      flags: { power },
    });
    return machineFacts(machine, place, household, parts);
  };
  expect(on(true)).toMatchObject({ battery: { care: 'maintainer', outOfReach: false } });
  expect(on(false)).toMatchObject({ battery: { care: 'visits', awayToCharge: true, outOfReach: false } });
});
