/** What a machine's record says of steps, held against the steps that there are. */
import { chemistryRow, isOutOfReach } from './battery/index.ts';
import { daysBetween, earlier } from './dates.ts';
import type { FuelChoice, IsoDate, Machine, Place, Procedure, Ticked, When } from './household.ts';
import { isOfSeason, recordSeason, restKey } from './rest-key.ts';
import type { PlanStep, StripPlan, Warning } from './season-plan.ts';
import { isStartUpCharge } from './start-up-charge.ts';
import { isStepName } from './step-names.ts';
import { isOn, jobStepId, offStepId, onStepId } from './strip/index.ts';
import { namesIn } from './tasks/amount-table.ts';
import { windowsOf } from './tasks/parts.ts';
import { tickedOn } from './ticked.ts';
import { counted } from './written.ts';

/** Phases whose steps can be left out on purpose: a check before the ride cannot. */
const CAN_BE_LEFT_OUT: readonly PlanStep['phase'][] = ['lay-up', 'look-in', 'swap'];

/**
 * The machine with what its record says of this season: last year's ticks do not count again.
 *
 * A job stays finished and an assembly that was taken off stays off until it is refitted, whatever the season. Fuel that was
 * drained is drained, whatever the plan would choose today; salt that was rinsed off is off.
 * @param machine - as written, with all its records
 * @param procedures - whose steps it names
 */
export function ofThisSeason(machine: Machine, procedures: readonly Procedure[]): Machine {
  const isNow = (tick: Ticked) => isOfSeason(tick, recordSeason(machine.season));
  const choice = fuelChoice(machine, procedures);
  const finished = new Set(machine.doneSteps.filter((tick) => !isNow(tick)).map(({ stepId }) => stepId));
  const off = new Map(machine.assemblies.map(({ id }) => [offStepId(id), id]));
  const isStillOff = ({ stepId, date }: { stepId: string; date: IsoDate }) =>
    off.has(stepId) && !isOn(machine, off.get(stepId)!, date);
  return {
    ...machine,
    fuel: machine.fuel && choice ? { ...machine.fuel, choice } : machine.fuel,
    roadSalt: { ...machine.roadSalt, washed: machine.roadSalt.washed || isRinsed(machine, procedures) },
    doneSteps: machine.doneSteps.filter((tick) => isNow(tick) || isStillOff(tick)),
    skippedSteps: machine.skippedSteps?.filter(isNow),
    jobs: machine.jobs.map((job) => (finished.has(jobStepId(job.id)) ? { ...job, done: true } : job)),
    asLeft: machine.asLeft.filter(({ item, since }) => {
      const assembly = machine.assemblies.find(({ id }) => item === id || item === `assembly:${id}`);
      const refit = machine.doneSteps.find(({ stepId }) => assembly && stepId === onStepId(assembly.id));
      return !assembly || !refit || isNow(refit) || !isOn(machine, assembly.id, since ?? '');
    }),
  };
}

/** The machine without what it was left without, where that is back on and no job of the strip-down needs it off. */
export function withoutRefitted(machine: Machine, strip: StripPlan): Machine {
  const inStrip = new Set(strip.off.map(({ assembly }) => assembly));
  const isBack = (item: string) =>
    machine.assemblies.some(({ id }) => (item === id || item === `assembly:${id}`) && !inStrip.has(id));
  return { ...machine, asLeft: machine.asLeft.filter(({ item }) => !isBack(item)) };
}

/** Names of the lay-up's steps that only a salted machine has. */
function rinses(procedures: readonly Procedure[]): string[] {
  return procedures
    .filter(({ phase }) => phase === 'lay-up')
    .flatMap(({ id, steps }) =>
      steps.filter(({ when }) => ((when.roadSalt ?? {}) as When).exposed === true).map((step) => `${id}.${step.id}`),
    );
}

/** Whether a rinse of this season's lay-up is done. */
function isRinsed(machine: Machine, procedures: readonly Procedure[]): boolean {
  const { season } = machine;
  const doneSteps = machine.doneSteps.filter((tick) => isOfSeason(tick, recordSeason(season)));
  return rinses(procedures).some((id) => tickedOn({ season, doneSteps }, { id, phase: 'lay-up' }) !== undefined);
}

/**
 * Whether a rinse of the lay-up is planned, neither left out nor past its days.
 * @param machine - as `ofThisSeason` gives it
 * @param procedures - the practice that has the rinse
 * @param asOf - the day the plan is made for
 */
export function isRinseAhead(
  { season, skippedSteps }: Pick<Machine, 'season' | 'skippedSteps'>,
  procedures: readonly Procedure[],
  asOf: IsoDate,
): boolean {
  return asOf <= windowsOf(season).layUpEnd && rinses(procedures).some((id) => !isSkipped({ skippedSteps }, id));
}

/**
 * Whether the closed bag is left out on purpose: a cover takes its place.
 * @param machine - as `ofThisSeason` gives it
 * @param procedures - the work is each step of the lay-up that only a machine in a bag has
 */
export function isBagLeftOut(machine: Pick<Machine, 'skippedSteps'>, procedures: readonly Procedure[]): boolean {
  return procedures.some(
    ({ id, phase, steps }) =>
      phase === 'lay-up' &&
      steps.some(
        (step) => ((step.when.corrosion ?? {}) as When).bag === true && isSkipped(machine, `${id}.${step.id}`),
      ),
  );
}

const isSkipped = ({ skippedSteps }: Pick<Machine, 'skippedSteps'>, id: string) =>
  skippedSteps?.some(({ stepId }) => stepId === id) ?? false;

/** What was done with the fuel, where a step was done that only one choice has. */
function fuelChoice(machine: Machine, procedures: readonly Procedure[]): FuelChoice | undefined {
  const choices = machine.doneSteps
    .filter((tick) => isOfSeason(tick, recordSeason(machine.season)))
    .flatMap(({ stepId }): FuelChoice[] => {
      const { phase, when } = procedures.find(({ id }) => stepId.startsWith(`${id}.`)) ?? {};
      const { choice } = (phase === 'lay-up' && typeof when?.fuel === 'object' ? when.fuel : {}) as When;
      return choice === 'fill' || choice === 'drain' || choice === 'leave' ? [choice] : [];
    });
  return choices.at(-1);
}

/**
 * The day on which the lay-up's work on something is ticked, by itself or with the whole lay-up; undefined where it is not.
 * @param machine - as `ofThisSeason` gives it
 * @param procedures - whose steps the record names
 * @param amounts - the work is each step whose title gives one of these amounts
 */
export function laidUpOn(
  { doneSteps }: Pick<Machine, 'doneSteps'>,
  procedures: readonly Procedure[],
  amounts: readonly string[],
): IsoDate | undefined {
  if (doneSteps.length === 0) return undefined;
  const isWork = ({ title }: Procedure['steps'][number]) => namesIn(title).some((name) => amounts.includes(name));
  const works = new Set(
    procedures.flatMap(({ id, phase, steps }) =>
      phase === 'lay-up' ? steps.filter(isWork).map((step) => `${id}.${step.id}`) : [],
    ),
  );
  const tick = doneSteps.find(({ stepId }) => works.has(stepId)) ?? doneSteps.find(({ stepId }) => stepId === 'lay-up');
  return tick?.date;
}

/**
 * The day on which the start-up's work on petrol that stood is ticked, by itself or with the whole start-up.
 * @param machine - as `ofThisSeason` gives it
 * @param procedures - the work is each step of the start-up that only petrol of some age has
 */
export function petrolSeenToOn(machine: Machine, procedures: readonly Procedure[]): IsoDate | undefined {
  if (machine.doneSteps.length === 0) return undefined;
  return procedures
    .filter(({ phase }) => phase === 'start-up')
    .flatMap(({ id, phase, steps }) =>
      steps
        .filter(({ when }) => ((when.fuel ?? {}) as When).spring !== undefined)
        .flatMap((step) => tickedOn(machine, { id: `${id}.${step.id}`, phase }) ?? []),
    )
    .sort()[0];
}

/**
 * The machine with what was opened by a step that is done, and that the plan of today has no longer: it is open all the same.
 * @param machine - as `ofThisSeason` gives it
 * @param steps - all steps of its plan
 * @param procedures - whose steps the record names
 */
export function withOpened(machine: Machine, steps: readonly PlanStep[], procedures: readonly Procedure[]): Machine {
  const planned = new Set(steps.map(({ id }) => id));
  const known = new Set([...steps.flatMap(({ opens }) => opens), ...machine.asLeft.map(({ item }) => item)]);
  const closable = new Set(steps.flatMap(({ closes }) => closes));
  const opened = machine.doneSteps
    .filter(({ stepId }) => !planned.has(stepId))
    .flatMap(({ stepId, date }) => {
      const procedure = procedures.find(({ id, phase }) => phase === 'lay-up' && stepId.startsWith(`${id}.`));
      const step = procedure?.steps.find(({ id, each }) => each === undefined && `${procedure.id}.${id}` === stepId);
      return (step?.opens ?? []).map(({ item }) => ({ item, since: date }));
    })
    .filter(({ item }) => closable.has(item) && !known.has(item));
  return { ...machine, asLeft: [...machine.asLeft, ...opened] };
}

/** A charge that is ticked and one that is logged within this many days are the same one. */
const SAME_CHARGE_DAYS = 3;

/** Whether a step is a charge of the rest. */
export const isChargeStep = (stepId: string, procedures: readonly Procedure[]): boolean =>
  procedures.some(({ id, steps }) =>
    steps.some((step) => step.each === 'charge' && stepId.startsWith(`${id}.${step.id}.`)),
  );

/** Whether it is the charge of the start-up, or the whole start-up, which holds it. */
const chargesFull = (stepId: string, procedures: readonly Procedure[]): boolean =>
  stepId === 'start-up' ||
  procedures.some(({ id, phase, steps }) =>
    steps.some((step) => stepId === `${id}.${step.id}` && isStartUpCharge({ ...step, phase })),
  );

/**
 * The machine with each ticked charge as a charge: who ticks "charge" on its day, or the charge of the start-up, has charged.
 * @param machine - as written, with all its records
 * @param procedures - whose steps it names
 */
export function withTickedCharges(machine: Machine, procedures: readonly Procedure[]): Machine {
  const { battery, charged } = machine;
  if (!battery || machine.doneSteps.length === 0) return machine;
  const toPct = chemistryRow(battery.chemistry).chargeToPct;
  const ticked = machine.doneSteps
    .filter((tick) => isOfSeason(tick, recordSeason(machine.season)))
    .flatMap(({ stepId, date }) =>
      isChargeStep(stepId, procedures)
        ? [{ date, toPct }]
        : chargesFull(stepId, procedures)
          ? [{ date, toPct: 100 }]
          : [],
    )
    .filter(({ date }, i, all) =>
      [...charged, ...all.slice(0, i)].every((c) => Math.abs(daysBetween(c.date, date)) > SAME_CHARGE_DAYS),
    );
  if (ticked.length === 0) return machine;
  return {
    ...machine,
    charged: [...charged, ...ticked].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
  };
}

/** What a lay-up leaves open where the leads of the battery are off. */
const LEAD_OFF: readonly string[] = ['battery-disconnected', 'battery-out'];

/**
 * The machine with what its ticks say of its battery beside the charges of the rest, which are counted: the day it was charged for its
 * lay-up, the day its lead came off, the day it was charged for its start-up.
 *
 * A lay-up charge that comes before the rest, since nothing can charge the battery later, was made on the last day of use at the latest.
 * @param machine - as written, with all its records
 * @param procedures - whose steps it names
 * @param place - where it rests
 */
export function withTickedBattery(
  machine: Machine,
  procedures: readonly Procedure[],
  place: Pick<Place, 'power'> | undefined,
): Machine {
  const { battery, season, skippedSteps, asLeft } = machine;
  if (!battery) return machine;
  const ticks = machine.doneSteps.filter((tick) => isOfSeason(tick, recordSeason(season)));
  const steps = procedures
    .filter(({ phase }) => phase === 'lay-up')
    .flatMap(({ id, steps }) => steps.map((step) => ({ step, id: `${id}.${step.id}` })));
  const dayOf = (found: typeof steps) =>
    found
      .filter(({ id }) => !isSkipped({ skippedSteps }, id))
      .flatMap(({ id }) => tickedOn({ season, doneSteps: ticks }, { id, phase: 'lay-up' }) ?? [])
      .sort()[0];
  const charges = steps.filter(({ step }) => step.needs.charger && step.when.battery !== undefined);
  const isLeftOut = charges.some(({ id }) => isSkipped({ skippedSteps }, id));
  const laidUp = isLeftOut ? undefined : dayOf(charges);
  const off = steps.filter(({ step }) => step.opens.some(({ item }) => LEAD_OFF.includes(item)));
  const isOff = asLeft.some(({ item }) => LEAD_OFF.includes(item));
  const isBefore = place !== undefined && isOutOfReach(battery, place);
  return {
    ...machine,
    chargedAtLayUp: laidUp && isBefore ? earlier(laidUp, season.lastUse) : laidUp,
    chargedAtStartUp: ticks.find(({ stepId }) => chargesFull(stepId, procedures))?.date,
    leadOffOn: isOff ? season.lastUse : dayOf(off),
  };
}

/**
 * The machine with only those steps left out that can be.
 * @param machine - with its record
 * @param steps - all steps of its plan
 */
export function withSoundSkips(machine: Machine, steps: readonly PlanStep[]): Machine {
  const phases = new Map(steps.map((step) => [step.id, step.phase]));
  const skippedSteps = machine.skippedSteps?.filter(({ stepId }) => canBeLeftOut(phases.get(stepId)));
  return { ...machine, skippedSteps };
}

/** What was left out on purpose, in words for the machine's notes. */
export function leftOutNotes(machine: Machine, steps: readonly PlanStep[]): { date: IsoDate; text: string }[] {
  return (machine.skippedSteps ?? []).flatMap(({ stepId, date, why }) => {
    const step = steps.find(({ id }) => id === stepId);
    return step ? [{ date, text: `Left out on purpose: ${step.title}${why === undefined ? '' : ` (${why})`}` }] : [];
  });
}

/**
 * What of the record goes by: names that no step has, and checks that cannot be left out.
 *
 * A step that this season's plan has no use for is no fault: last year's record may name it.
 * @param machine - as written
 * @param steps - all steps of its plan
 * @param procedures - the practice that steps are named after
 */
export function recordWarnings(
  machine: Machine,
  steps: readonly PlanStep[],
  procedures: readonly Procedure[],
): Warning[] {
  if (machine.doneSteps.length === 0 && !machine.skippedSteps?.length) return [];
  const phases = new Map(steps.map((step) => [step.id, step.phase]));
  const note = (text: string, act: string): Warning => ({
    machine: machine.id,
    level: 'warning',
    text,
    act,
    about: 'record',
  });
  const skipped = machine.skippedSteps ?? [];
  const ids = [...new Set([...machine.doneSteps, ...skipped].map(({ stepId }) => stepId))];
  return [
    ...ids
      .filter((id) => !isStepName(id, procedures))
      .map((id) =>
        note(
          `The record of ${machine.name} names the step "${id}", and there is no such step: nothing was ticked by it.`,
          'Correct the name in the record; the steps and their names stand in plan.json.',
        ),
      ),
    ...skipped
      .filter(({ stepId }) => phases.has(stepId) && !canBeLeftOut(phases.get(stepId)))
      .map(({ stepId }) =>
        note(
          `The record of ${machine.name} leaves out "${stepId}", which cannot be left out: it stays on the sheet.`,
          'Only steps of the lay-up and of look-ins can be left out. Take the line out of the record.',
        ),
      ),
  ];
}

/**
 * A record that names a later season than the machine's file: its dates were not written anew, and nothing of it counts.
 * @param machine - as written, with all its records
 */
export function laterSeasonWarnings({ id, name, file, season, doneSteps, skippedSteps = [] }: Machine): Warning[] {
  const now = restKey(season);
  const later = [...doneSteps, ...skippedSteps].filter((tick) => tick.season !== undefined && tick.season > now);
  if (later.length === 0) return [];
  const text = `The record of ${name} is of a later season than the one that is planned: ${counted(later.length, 'entry', 'entries')} not counted.`;
  return [
    { machine: id, level: 'warning', text, act: `Write the next lastUse and firstUse in ${file}.`, about: 'record' },
  ];
}

/** Whether a step of this phase can be left out on purpose. */
export function canBeLeftOut(phase: PlanStep['phase'] | undefined): boolean {
  return phase !== undefined && CAN_BE_LEFT_OUT.includes(phase);
}
