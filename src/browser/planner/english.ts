/** Every word of the planner page that does not come from the plan. */
export const title = 'Plan a machine';
export const lead =
  'Answer what you know; what you leave open is assumed, and said so. Everything stays on this device.';
export const days = 'What to do, by day';
export const start = 'Choose a weather station to see the plan.';
export const working = 'Working it out …';
export const stationNone =
  'This page knows no station or town of that name. Type a larger town nearby, or latitude and longitude off a map, such as 52.4, -113.8: the nearest station is found by them.';
export const hereNot = 'The device does not say where it is. Type a town or coordinates.';
export const stationChosen = (name: string) => `Weather of ${name}`;
export const stationFar = (distance: string) => `${distance} away`;
export const stationOf = (name: string, distance: string) => `station ${name}, ${distance} away`;
export const nameMissing = 'Give it a name.';
export const chargerMissing = 'Say what it gives, or take the tick below away.';
export const diesel =
  'Diesel engines are not planned: they ask for other work than petrol engines. Lay this one up by its manual, and remove it here.';
export const unsound = 'Correct what is marked to see the plan.';
export const unnamed = 'Give every machine a name to see the plan.';
export const stationKept = (name: string) =>
  `The plan still has the weather of ${name}: choose from the list to change it.`;
export const newMachine = (n: number) => (n === 1 ? 'My machine' : `Machine ${n}`);
export const add = 'Add a machine';
export const remove = 'Remove this machine';
export const removeSure = (name: string) => `Really remove ${name}`;
export const unlog = 'Take back';
export const tick = 'Done: ';
export const ticked = (n: number) => (n === 1 ? 'One step ticked on a sheet' : `${n} steps ticked on the sheets`);
export const doneWhole =
  'The whole sheet is written down as done. Take that back under “Done and measured” first, then tick what is done.';
export const late = 'Worked out when the slider is let go.';
export const over = (lastUse: string, firstUse: string) =>
  `This rest is over. The next one, on the same days, is ${lastUse === '' ? `until ${firstUse}` : `${lastUse} to ${firstUse}`}.`;
export const seasonEnd = (date: string) => `Season ends ${date}`;
export const problems = (n: number) => (n === 1 ? 'One thing to put right' : `${n} things to put right`);
export const filesRead = (n: number) =>
  n === 1 ? 'One file read. The plan below is made from it.' : `${n} files read. The plan below is made from them.`;
export const filesProblems = (problems: number, files: number) =>
  `${problems === 1 ? 'One problem' : `${problems} problems`} in ${files === 1 ? 'one file' : `${files} files`}. Nothing was planned.`;
export const backToForm = 'Back to my own machines';
export const noFiles = 'None of these is a content file: files end in .yaml, or are packed into a .zip.';
export const failed = 'That did not work. Reload the page; what you answered is kept on this device.';
export const aside = 'What this page had kept from you before cannot be read any more. It was put aside.';
export const saveAside = 'Save the old answers as a file';
export const forgetAside = 'I have them: say no more of it';
export const notKept =
  'This window does not let the page keep your answers. Take the content files before you close it.';
export const notRemembered =
  'The calendar file is made. This window cannot remember its reminders: a later file moves them, but cannot take back what falls away.';
