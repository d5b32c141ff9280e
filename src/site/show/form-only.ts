/**
 * A text of the plan for somebody who answers the form and has no files. Where something can be said in either, the plan names
 * both in this order: "Fuel stabiliser at hand" in the form, fuelCare.stabiliserDose in household.yaml. What only a file takes
 * stands in brackets that end in it: (sidewallMax in the machine’s file).
 * @returns the text without the way by files
 */
export function formOnly(text: string): string {
  return text.replaceAll(/( (?:in|on) the form),.*?(?=[.;](?: |$))| \([^()]* file\)/g, '$1');
}
