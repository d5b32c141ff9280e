import { SHORT_REST_DAYS } from '../rest-length.ts';
import type { FuelPlan, Warning } from '../season-plan.ts';
import { formatQuantity } from '../units/index.ts';
import { counted, writtenDate } from '../written.ts';
import { blendRow } from './blends.ts';
import { cansFor } from './cans.ts';
import type { FuelFacts } from './facts.ts';

/**
 * What of the fuel plan needs the person's attention.
 * @param plan - the plan
 * @param facts - what it was made from
 */
export function warningsFor(plan: FuelPlan, facts: FuelFacts): Warning[] {
  const list = plan.choice === 'fill' ? fillWarnings(plan, facts) : drainWarnings(plan, facts);
  return list.map((w) => ({ ...w, machine: facts.machine.id, about: 'fuel' }));
}

type Note = Pick<Warning, 'level' | 'text' | 'act'>;

function fillWarnings(plan: FuelPlan, facts: FuelFacts): Note[] {
  const { fuel, advised, household, amounts, treated, highestStoreC, restDays } = facts;
  const q = (value: number, unit: string) => formatQuantity(value, unit, household.units);
  const notes: Note[] = [];
  if (advised.choice === 'drain') {
    notes.push({
      level: 'warning',
      text: `You chose to fill. ${advised.reason}`,
      act: 'Drain it, or take the reason away.',
    });
  }
  if (amounts && amounts.drawOffL > 0.005) {
    notes.push({
      level: 'warning',
      text: `The tank is so full that it would run over at ${q(highestStoreC, '°C')} in the store.`,
      act: `Draw off ${q(amounts.drawOffL, 'L')} before the rest.`,
    });
  } else if (amounts && amounts.addL > 0 && amounts.levelL < 0.95 * fuel.tankL - 0.005) {
    notes.push({
      level: 'note',
      text: `Filled to ${((100 * amounts.levelL) / fuel.tankL).toFixed(0)} % only, so that it does not run over at ${q(highestStoreC, '°C')} in the store.`,
      act: `Add ${q(amounts.addL, 'L')} and no more.`,
    });
  }
  const untreated = household.fuelCare.stabiliserDoseMLPerL === undefined && restDays >= SHORT_REST_DAYS;
  const useBy = `use by ${writtenDate(plan.useBy.latest, household.locale)}`;
  if (untreated && plan.atFirstUse.verdict !== 'use') {
    const without = plan.atFirstUse.verdict === 'dispose' ? ' Without it the fuel goes to the collection point.' : '';
    notes.push({
      level: 'warning',
      text: `No stabiliser at hand: untreated fuel does not last this rest (${useBy}).`,
      act: `Get stabiliser before the last run, and say its dose: "Fuel stabiliser at hand" in the form, fuelCare.stabiliserDose in household.yaml.${without}`,
    });
  } else if (plan.atFirstUse.verdict === 'dispose') {
    notes.push({
      level: 'warning',
      text: `By first use the fuel is too old (${useBy}).`,
      act: 'Plan to take it to the local collection point; fill fresh before the first start.',
    });
  } else if (plan.atFirstUse.verdict === 'mix' && treated) {
    notes.push({
      level: 'note',
      text: `By first use the fuel is past its surest age (${writtenDate(plan.useBy.earliest, household.locale)}).`,
      act: 'Run the machine within the window, or mix with at least two parts fresh fuel.',
    });
  }
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
            act: 'Keep the tank full to 95 %, check the cap seal, and look for a layer at the bottom before the first start.',
          },
    );
  }
  if (fuel.premix && (plan.addL ?? 0) > 0) {
    notes.push({
      level: 'note',
      text: 'This engine runs on two-stroke mixture.',
      act: 'Top up with mixture of the same ratio, never with plain petrol.',
    });
  }
  return notes;
}

function drainWarnings(plan: FuelPlan, facts: FuelFacts): Note[] {
  const { fuel, advised, household, takers, asOf, machine } = facts;
  const q = (value: number, unit: string) => formatQuantity(value, unit, household.units);
  const drainedL = plan.drainedL ?? 0;
  const { canL, cans: atHand } = household.fuelCare;
  const notes: Note[] = [];
  if (advised.choice === 'fill') {
    notes.push({
      level: 'note',
      text: `You chose to drain. ${advised.reason}`,
      act: 'Fill it, unless you have a reason of your own.',
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
      level: 'warning',
      text: `${q(drainedL, 'L')} are drained, and ${atHand === 0 ? 'no approved can is' : `${atHand === 1 ? `one of ${q(canL, 'L')} is` : `${atHand} of ${q(canL, 'L')} hold ${q(atHand * canL, 'L')} and are`}`} at hand.`,
      act: `Have ${counted(plan.cans ?? 0, 'approved can')} ready, or ride the tank down first.`,
    });
  } else {
    const most = cansFor(fuel.inTankL.high + (drainedL - fuel.inTankL.value), canL);
    if (most > atHand) {
      notes.push({
        level: 'note',
        text: `If the tank holds as much as it can, ${counted(most, 'can')} ${most === 1 ? 'is' : 'are'} needed; ${atHand === 0 ? 'none' : atHand} ${atHand === 1 ? 'is' : 'are'} at hand.`,
        act: 'Look into the tank before you begin.',
      });
    }
  }
  if (plan.localLimit.exceeded === true) {
    notes.push({
      level: 'warning',
      text: `More petrol than is allowed in cans without more ado (${plan.localLimit.where}).`,
      act: 'Ride the tank down first or use it up at once; check your local code.',
    });
  }
  const by = plan.drainedUseBy ?? machine.season.lastUse;
  if (plan.useBy.latest < machine.season.lastUse) {
    notes.push({
      level: 'warning',
      text: 'The fuel is too old already when it is drained.',
      act: 'Take it to the local collection point.',
    });
  } else if (drainedL > 0 && asOf > by) {
    // After the first use it is no matter of this rest any more.
    if (asOf >= machine.season.firstUse) return notes;
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
