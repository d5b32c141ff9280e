/**
 * Words of what only a combustion engine has. Definition: an electric machine burns nothing and has no spark, exhaust or oil lamp; a
 * clutch it has only where its owner says so.
 */
export const BURNING =
  /\bpetrol\b|\bfuel|\bengine|spark plug|ignition|exhaust|silencer|carburettor|airbox|choke|crank|\bfog|oil (?:light|lamp)|clutch|plug lead|thermostat|stabilis/i;
