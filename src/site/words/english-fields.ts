/** Fields of content in words: for somebody who has never seen the file. */

const GROUPS: Readonly<Record<string, string>> = { cooling: 'coolant', enclosure: 'store', roadSalt: 'road salt' };

/** Where the field's own name says too little, or says it in the manner of a file. */
const FIELDS: Readonly<Record<string, string>> = {
  chargeAtLayUp: 'state of charge when use ends',
  doubling: 'warming that doubles its self-discharge',
  drain: 'what draws on it with the key off',
  lowestStorage: 'lowest temperature it may be kept at',
  memoryCircuits: 'clock or radio that keeps its memory',
  removable: 'can be taken out',
  inTank: 'in the tank when use ends',
  densityKgPerM3: 'density',
  lined: 'tank lined inside',
  oil: 'oil it takes',
  start: 'how it is started',
  idleFlow: 'petrol burnt at idle',
  drainable: 'what its drain lets out',
  exposed: 'used on salted roads',
  offGround: 'stands off the ground',
  timeConstant: 'time in which it follows the air outside',
  houseShare: 'share of warmth from the house',
};

/**
 * A field of content in words.
 * @param field - as an assumption has it: "battery.chargeAtLayUp", "places/shed: enclosure.timeConstant"
 * @returns "battery: state of charge when use ends"
 */
export function fieldText(field: string): string {
  return field
    .replace(/^.*: /, '')
    .split('.')
    .map((name) => GROUPS[name] ?? FIELDS[name] ?? name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`))
    .join(': ');
}
