/**
 * A text of the plan for somebody who answers the form and has no files. Where something can be said in either, the plan names
 * both in this order: "Fuel stabiliser at hand" in the form, fuelCare.stabiliserDose in household.yaml.
 * @returns the text without the way by files
 */
export function formOnly(text: string): string {
  return text.replaceAll(/( (?:in|on) the form),.*?(?=[.;](?: |$))/g, '$1');
}
