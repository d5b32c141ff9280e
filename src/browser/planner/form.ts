/** The form's fields and the drafts: one to the other. */
import type { AnswerProblem } from '../../content/answers.ts';
import { faultIn } from '../decimal.ts';
import { type Drafts, HOME_FIELDS, MACHINE_FIELDS, unitsOf } from './drafts.ts';
import { PLANNER } from './words.ts';

type Field = HTMLInputElement | HTMLSelectElement;

const fieldOf = (form: HTMLFormElement, name: string) => form.elements.namedItem(name) as Field | null;

/** Shows one machine of the drafts. */
export function fill(form: HTMLFormElement, drafts: Drafts, at: number): void {
  const values = { ...drafts.home, ...drafts.machines[at]! };
  for (const [name, value] of Object.entries(values)) {
    const field = fieldOf(form, name);
    if (!field) continue;
    if (field instanceof HTMLInputElement && field.type === 'checkbox') field.checked = value === 'true';
    else field.value = value;
    // A list has no answer for what an older form knew: its first one is shown.
    if (field instanceof HTMLSelectElement && field.selectedIndex < 0) field.selectedIndex = 0;
  }
  showUnits(form, drafts);
  showCoolant(form);
}

/** Coolant is asked for where an engine has some: what cools it is chosen, or is usual for the kind. */
function showCoolant(form: HTMLFormElement): void {
  const asked = form.querySelector<HTMLElement>('[data-coolant]')!;
  const cooling = fieldOf(form, 'cooling')!.value;
  const usual = asked.dataset.liquid!.split(' ').includes(fieldOf(form, 'kind')!.value);
  asked.hidden = isElectric(form) || (cooling !== 'liquid' && !(cooling === '' && usual));
}

const isElectric = (form: HTMLFormElement) => fieldOf(form, 'engine')!.value === 'electric';

function showUnits(form: HTMLFormElement, { home }: Drafts): void {
  // Water freezes at 0 °C, 32 °F, and coolant below it.
  fieldOf(form, 'coolant')!.dataset.max = unitsOf(home.units).coolant === '°F' ? '32' : '0';
  for (const [name, unit] of Object.entries(unitsOf(home.units)))
    form.querySelector(`[data-unit=${name}]`)!.textContent = unit;
}

/**
 * Takes what the fields hold into the drafts.
 * @returns true where every field is within its bounds; the others are marked
 */
export function take(form: HTMLFormElement, drafts: Drafts, at: number): boolean {
  const held = (name: string): string | undefined => {
    const field = fieldOf(form, name);
    if (!field) return undefined;
    if (isUnasked(field)) return '';
    return field instanceof HTMLInputElement && field.type === 'checkbox' ? String(field.checked) : field.value;
  };
  const machine = drafts.machines[at]!;
  showCoolant(form);
  for (const name of MACHINE_FIELDS) machine[name] = held(name) ?? machine[name];
  for (const name of HOME_FIELDS) drafts.home[name] = held(name) ?? drafts.home[name];
  showUnits(form, drafts);
  let sound = true;
  for (const field of form.querySelectorAll<Field>('input[name], select[name]')) {
    const wrong = isUnasked(field) ? '' : faultIn(field) || without(field, drafts);
    mark(field, wrong);
    if (wrong) sound = false;
  }
  return sound;
}

/** A question that is not put is not answered, whatever its field still holds. */
const isUnasked = (field: Field) =>
  field.closest('[data-coolant][hidden]') !== null || (field.closest('.of-petrol') !== null && isElectric(field.form!));

/** What an answer asks for beside it. */
function without({ name, value }: Field, { home }: Drafts): string {
  if (name === 'name') return value.trim() === '' ? PLANNER.nameMissing : '';
  if (name === 'engine') return value === 'diesel' ? PLANNER.diesel : '';
  return name === 'charger' && value.trim() === '' && home.keeper === 'true' ? PLANNER.chargerMissing : '';
}

/** The field of the form that a problem speaks of: "battery.capacity" is asked as "capacity". */
const ASKED: Record<string, string> = {
  'battery.capacity': 'capacity',
  'battery.chemistry': 'chemistry',
  'battery.removable': 'batteryOut',
  'cooling.freezesAt': 'coolant',
  'engine.cycle': 'engine',
  'fuel.tank': 'tank',
  'fuel.delivery': 'delivery',
  driveBattery: 'drive',
};

/** What the form calls the field that a problem speaks of. */
export function labelOf(form: HTMLFormElement, field: string): string {
  return fieldOf(form, ASKED[field] ?? field)?.labels?.[0]?.firstChild?.textContent?.trim() || field;
}

/** Marks the fields that problems speak of. */
export function markProblems(form: HTMLFormElement, problems: readonly AnswerProblem[]): void {
  for (const { field, what, fix } of problems) {
    const found = fieldOf(form, ASKED[field] ?? field);
    if (found) mark(found, `${what}. ${fix}`);
  }
}

function mark(field: Field, wrong: string): void {
  const id = `${field.name}-wrong`;
  let said = document.getElementById(id);
  if (wrong === '') {
    said?.remove();
    field.removeAttribute('aria-invalid');
    field.removeAttribute('aria-errormessage');
    return;
  }
  if (!said) {
    said = document.createElement('p');
    said.id = id;
    said.className = 'wrong small';
    said.role = 'alert';
    field.closest('label')?.after(said);
  }
  said.textContent = wrong;
  field.setAttribute('aria-invalid', 'true');
  field.setAttribute('aria-errormessage', id);
}
