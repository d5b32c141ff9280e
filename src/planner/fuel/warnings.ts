import type { IsoDate } from '../household.ts';
import { SHORT_REST_DAYS } from '../rest-length.ts';
import type { FuelPlan, Warning } from '../season-plan.ts';
import { formatQuantity } from '../units/index.ts';
import { counted, writtenDate } from '../written.ts';
import { blendRow } from './blends.ts';
import { cansFor } from './cans.ts';
import type { FuelFacts } from './facts.ts';

/**
 * What of the fuel plan needs the person's attention on the day of the plan: nothing is advised that is done or too late.
 * @param plan - the plan
 * @param facts - what it was made from
 */
export function warningsFor(plan: FuelPlan, facts: FuelFacts): Warning[] {
  if (facts.stage === 'over') return [];
  const list = plan.choice === 'drain' ? drainWarnings(plan, facts) : tankWarnings(plan, facts);
  return list.map((w) => ({ ...w, machine: facts.machine.id, about: 'fuel' }));
}

type Note = Pick<Warning, 'level' | 'text' | 'act'>;

/** How stabiliser that is bought comes into the plan. */
const SAY_DOSE = 'say its dose: "Fuel stabiliser at hand" in the form, fuelCare.stabiliserDose in household.yaml';

/** Warnings of petrol that stays in the tank. */
function tankWarnings(plan: FuelPlan, facts: FuelFacts): Note[] {
  const { fuel, advised, stage } = facts;
  const notes: Note[] = [];
  if (advised.choice === 'drain' && (stage !== 'resting' || advised.id === 'tank-comes-off')) {
    notes.push({
      level: 'warning',
      text: `You chose to ${plan.choice === 'fill' ? 'fill' : 'leave the petrol in the tank'}. ${advised.reason}`,
      act: 'Drain it, or take the reason away.',
    });
  }
  if (stage !== 'resting') notes.push(...levelWarnings(facts));
  if (plan.doseML !== undefined && facts.doneOn === undefined && facts.untreatedNow !== 'use')
    notes.push({
      level: 'warning',
      text: 'It is not ticked that the petrol was treated: untreated it is past its surest age by now.',
      act: `Stabiliser does not make old petrol fresh. Tick the lay-up if it was done; if not, ${facts.untreatedNow === 'dispose' ? 'drain the tank before the first start, take the petrol to the local collection point, and fill fresh' : 'mix it with at least two parts fresh fuel at the first use'}.`,
    });
  notes.push(...ageWarnings(plan, facts));
  if (plan.breathingWaterML > plan.waterToleranceML) {
    notes.push(
      blendRow(fuel.blend).water.law === 'hydrocarbon'
        ? {
            level: 'note',
            text: 'Petrol without ethanol holds next to no water: a few drops can gather at the bottom of the tank.',
            act: 'Drain the bowls and look into the filter before the first start.',
          }
        : {
            level: 'warning',
            text: 'In this store the tank could breathe in more water than the fuel holds in the cold.',
            act: `${plan.choice === 'fill' && stage !== 'resting' ? 'Keep the tank full to 95 %, check' : 'Check'} the cap seal, and look for a layer at the bottom before the first start.`,
          },
    );
  }
  if (fuel.premix && (plan.addL ?? 0) > 0 && stage !== 'resting') {
    notes.push({
      level: 'note',
      text: 'This engine runs on two-stroke mixture.',
      act: 'Top up with mixture of the same ratio, never with plain petrol.',
    });
  }
  return notes;
}

/** How full the tank may be. */
function levelWarnings({ fuel, amounts, highestStoreC, household }: FuelFacts): Note[] {
  const q = (value: number, unit: string) => formatQuantity(value, unit, household);
  if (!amounts) return [];
  if (amounts.drawOffL > 0)
    return [
      {
        level: 'warning',
        text: `The tank is so full that it would run over at ${q(highestStoreC, '°C')} in the store.`,
        act: `Draw off ${q(amounts.drawOffL, 'L')} before the rest.`,
      },
    ];
  if (amounts.addL > 0 && amounts.levelL < 0.95 * fuel.tankL - 0.005)
    return [
      {
        level: 'note',
        text: `Filled to ${((100 * amounts.levelL) / fuel.tankL).toFixed(0)} % only, so that it does not run over at ${q(highestStoreC, '°C')} in the store.`,
        act: `Add ${q(amounts.addL, 'L')} and no more.`,
      },
    ];
  return [];
}

/** Petrol that is past its age at first use: what can still be done about it, or what becomes of it. */
function ageWarnings(plan: FuelPlan, facts: FuelFacts): Note[] {
  const { household, restDays, machine, stage } = facts;
  const { verdict } = plan.atFirstUse;
  if (verdict === 'use') return [];
  const written = (date: IsoDate) => writtenDate(date, household.locale);
  const useBy = `use by ${written(plan.useBy.latest)}`;
  const atStartUp =
    verdict === 'dispose'
      ? 'At the start-up drain the tank, take the fuel to the local collection point, and fill fresh.'
      : 'At the start-up mix it with at least two parts fresh fuel.';
  const isAdvised = facts.fillsWithDose || facts.fuel.choice !== undefined;
  const untreated = household.fuelCare.stabiliserDoseMLPerL === undefined && restDays >= SHORT_REST_DAYS && isAdvised;
  if (untreated && stage !== 'resting') {
    const get =
      stage === 'before'
        ? `Get stabiliser by ${written(machine.season.lastUse)}`
        : 'Get stabiliser now, if the petrol is still fresh';
    const without =
      plan.choice === 'leave' ? `Without it do not fill up. ${atStartUp}` : `Without it: ${lowerFirst(atStartUp)}`;
    return [
      {
        level: 'warning',
        text: `No stabiliser at hand: untreated fuel does not last this rest (${useBy}).`,
        act: `${get}, and ${SAY_DOSE}. ${without}`,
      },
    ];
  }
  const isLate = facts.asOf > machine.season.firstUse;
  const fuelIs = isLate ? 'The fuel that stood in the tank is' : 'By first use the fuel is';
  if (verdict === 'dispose') return [{ level: 'warning', text: `${fuelIs} too old (${useBy}).`, act: atStartUp }];
  if (restDays < SHORT_REST_DAYS) return [];
  return [
    {
      level: 'note',
      text: `${fuelIs} past its surest age (${written(plan.useBy.earliest)}).`,
      act: isLate ? atStartUp : 'Run the machine within the window, or mix with at least two parts fresh fuel.',
    },
  ];
}

const lowerFirst = (text: string) => text[0]!.toLowerCase() + text.slice(1);

function drainWarnings(plan: FuelPlan, facts: FuelFacts): Note[] {
  const { household, takers, asOf, machine, fuel } = facts;
  const drainedL = plan.drainedL ?? 0;
  if (facts.stage === 'resting' && facts.doneOn === undefined) return neverDrained(facts);
  const notes = facts.stage === 'resting' ? [] : beforeDraining(plan, facts);
  if (plan.localLimit.exceeded === true) {
    notes.push({
      level: 'warning',
      text: `More petrol than is allowed in cans without more ado (${plan.localLimit.where}).`,
      act: 'Ride the tank down first or use it up at once; check your local code.',
    });
  }
  if (facts.usedUp) return notes;
  const by = plan.drainedUseBy ?? machine.season.lastUse;
  if (plan.drainedOld) {
    notes.push({
      level: 'warning',
      text: 'The fuel is too old to be used up when it is drained.',
      act: 'Take it to the local collection point.',
    });
  } else if (drainedL > 0 && asOf > by) {
    notes.push({
      level: 'warning',
      text: `The drained fuel was to be used up by ${writtenDate(by, household.locale)}.`,
      act: 'What is left of it is old: take it to the local collection point; do not keep it for the start-up.',
    });
  } else if (drainedL > 0) {
    const kind = fuel.premix ? 'a two-stroke that runs on mixture' : 'a running engine that takes this blend';
    notes.push({
      level: 'note',
      text: `Use the drained fuel up by ${writtenDate(by, household.locale)}${takers.length > 0 ? `: ${takers.join(', ')} can take it` : ''}.`,
      act:
        takers.length > 0
          ? 'Label the can with date and blend; do not keep it for the start-up.'
          : `No other machine here is in use then: find ${kind}, or take it to the local collection point.`,
    });
  }
  return notes;
}

/** The start-up has begun, and nobody ticked that the tank was drained: what may still be in it. */
function neverDrained({ untreatedNow }: FuelFacts): Note[] {
  const old = {
    use: 'it is within its age: use it',
    mix: 'it is past its surest age: use it under at least two parts fresh fuel',
    dispose: 'it is old: drain it before the start and take it to the local collection point',
  }[untreatedNow];
  return [
    {
      level: untreatedNow === 'use' ? 'note' : 'warning',
      text: 'The petrol was to be drained at the lay-up, and that is not ticked.',
      act: `Look into the tank. If petrol is still in it, ${old}.`,
    },
  ];
}

/** What is to be known and ready before the tank is opened. */
function beforeDraining(plan: FuelPlan, facts: FuelFacts): Note[] {
  const { fuel, advised, household, stage, machine } = facts;
  const q = (value: number, unit: string) => formatQuantity(value, unit, household);
  const drainedL = plan.drainedL ?? 0;
  const { canL, cans: atHand } = household.fuelCare;
  const notes: Note[] = [];
  if (advised.choice !== 'drain') {
    notes.push({
      level: 'note',
      text: `You chose to drain. ${advised.reason}`,
      act: `${advised.choice === 'fill' ? 'Fill it' : 'Leave it in the tank'}, unless you have a reason of your own.`,
    });
  }
  if (fuel.tankMaterial === 'steel' && !fuel.lined) {
    notes.push({
      level: 'warning',
      text: 'A bare steel tank rusts when it stands empty.',
      act: 'Coat the inside with oil mist, close it, and rinse it out before it is filled again.',
    });
  }
  if ((plan.cans ?? 0) > atHand) {
    notes.push({
      // Whoever names no can was perhaps not asked for one.
      level: atHand === 0 ? 'note' : 'warning',
      text: `${q(drainedL, 'L')} are drained, ${atHand === 0 ? `reckoned in cans of ${q(canL, 'L')}` : `and ${atHand === 1 ? `one of ${q(canL, 'L')} is` : `${atHand} of ${q(canL, 'L')} hold ${q(atHand * canL, 'L')} and are`} at hand`}.`,
      act: `Have ${counted(plan.cans ?? 0, 'approved can')} ready, or ride the tank down first.`,
    });
  } else {
    const most = cansFor(fuel.inTankL.high + (drainedL - fuel.inTankL.value), canL);
    if (most > atHand) {
      notes.push({
        level: 'note',
        text: `If the tank holds as much as it can, ${counted(most, 'can')} ${most === 1 ? 'is' : 'are'} needed${atHand === 0 ? '' : `; ${atHand} ${atHand === 1 ? 'is' : 'are'} at hand`}.`,
        act: 'Look into the tank before you begin.',
      });
    }
  }
  if (advised.id === 'no-stabiliser' && facts.fillsWithDose && stage === 'before') {
    notes.push({
      level: 'note',
      text: 'With stabiliser the petrol could stay in a full tank.',
      act: `Get some by ${writtenDate(machine.season.lastUse, household.locale)}, and ${SAY_DOSE}; the plan then fills.`,
    });
  }
  return notes;
}
