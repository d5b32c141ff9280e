/** What a machine's 12 V battery is called in a text: the one home of its name. */
import type { Machine } from '../household.ts';

/** What is asked of a machine: whether another battery drives it. */
type Powered = { driveBattery?: unknown };

/** "battery", or "12 V battery" where the machine has a drive battery as well. */
export const batteryWord = ({ driveBattery }: Powered): string => (driveBattery ? '12 V battery' : 'battery');

/** "Moth's battery", "Moth's 12 V battery". */
export const batteryName = (machine: Pick<Machine, 'name'> & Powered): string =>
  `${machine.name}'s ${batteryWord(machine)}`;
