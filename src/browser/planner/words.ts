/** Every word of the planner page that does not come from the plan. */
export const PLANNER = {
  title: 'Plan a machine',
  lead: 'Answer what you know; what you leave open is assumed, and said so. Everything stays on this device.',
  days: 'What to do, by day',
  start: 'Choose a weather station to see the plan.',
  working: 'Working it out …',
  stationNone: 'No station of that name. Try a larger town nearby, or coordinates such as 52.4, -113.8.',
  hereNot: 'The device does not say where it is. Type a town or coordinates.',
  stationChosen: (name: string) => `Weather of ${name}`,
  stationFar: (km: number) => `${km} km away`,
  notANumber: 'A number is needed here.',
  newMachine: (n: number) => (n === 1 ? 'My machine' : `Machine ${n}`),
  add: 'Add a machine',
  remove: 'Remove this machine',
  removeSure: (name: string) => `Really remove ${name}`,
  seasonEnd: (date: string) => `Season ends ${date}`,
  problems: (n: number) => (n === 1 ? 'One thing to put right' : `${n} things to put right`),
  filesRead: (n: number) =>
    n === 1 ? 'One file read. The plan below is made from it.' : `${n} files read. The plan below is made from them.`,
  filesProblems: (problems: number, files: number) =>
    `${problems === 1 ? 'One problem' : `${problems} problems`} in ${files === 1 ? 'one file' : `${files} files`}. Nothing was planned.`,
  backToForm: 'Back to my own machines',
  noFiles: 'None of these is a content file: files end in .yaml.',
  failed: 'That did not work. Reload the page; what you answered is kept on this device.',
  aside: 'What this page had kept from you before cannot be read any more. It was put aside.',
  saveAside: 'Save the old answers as a file',
  notKept: 'This window does not let the page keep your answers. Take the content files before you close it.',
} as const;
