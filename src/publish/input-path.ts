/** Where a page finds what it needs to plan its machine anew. Apart from the writing of it, since pages are built without. */

/**
 * A household of so many machines is published whole for its pages to plan anew: work sessions and reminders of all machines then
 * move with a reading. Of a larger one each machine has a file with those that share its charging trips: the whole would be slow
 * on a phone.
 */
export const WHOLE_AT_MOST = 24;

/**
 * The file that a machine's page plans from.
 * @param machines - number of machines of the household
 * @param id - of the machine
 * @param hasBattery - without one, nothing of a large household's machine moves
 * @returns path in the site, or undefined where there is none
 */
export function inputPath(machines: number, id: string, hasBattery: boolean): string | undefined {
  if (machines <= WHOLE_AT_MOST) return 'household.json';
  return hasBattery ? `machines/${id}/input.json` : undefined;
}
