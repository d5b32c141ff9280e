/** The battery that drives an electric machine as written, completed with its kind's and its chemistry's figures. */
import { DRIVE_CHEMISTRIES } from '../planner/drive-battery/chemistries.ts';
import type { DriveBattery, DriveChemistry, Engine } from '../planner/household.ts';
import type { Assumptions } from './assume.ts';
import type { MachineFile } from './schemas/machine.ts';

/**
 * The drive battery; undefined where something burns.
 * @param raw - the machine's file
 * @param engine - as completed
 */
export function resolveDriveBattery(raw: MachineFile, engine: Engine, assume: Assumptions): DriveBattery | undefined {
  if (engine.cycle !== 'electric') return undefined;
  const given = raw.driveBattery ?? {};
  const chemistry = assume.fill<DriveChemistry>(given.chemistry, 'driveBattery.chemistry', 'driveBattery.chemistry');
  const { name, lowestStorageC } = DRIVE_CHEMISTRIES[chemistry];
  return {
    chemistry,
    removable: assume.fill<boolean>(given.removable, 'driveBattery.removable', 'driveBattery.removable'),
    lowestStorageC:
      given.lowestStorage ??
      assume.number({
        field: 'driveBattery.lowestStorage',
        target: 'driveBattery.lowestStorageC',
        unit: '°C',
        range: [lowestStorageC.value, lowestStorageC.low, lowestStorageC.high],
        reason: `usual for ${name} (from memory of data sheets); its manual says`,
      }).value,
  };
}
