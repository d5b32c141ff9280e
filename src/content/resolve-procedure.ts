/** A procedure's file as written -> the planner's procedure. */
import type { Procedure, ProcedureStep, ProcedureSupply, When } from '../planner/household.ts';
import type { ProcedureFile } from './schemas/procedure.ts';
import type { Source } from './source.ts';

/**
 * A procedure for the planner, with the lines of its steps and items.
 * @param name - id: the file's name without its ending
 * @param value - as the schema gives it
 * @param source - the file as read
 */
export function toProcedure(name: string, value: ProcedureFile, source: Pick<Source, 'file' | 'at'>): Procedure {
  const at: Procedure['at'] = {};
  const steps = value.steps.map((one, index): ProcedureStep => {
    at[`steps.${index}`] = source.at(['steps', index]);
    for (const field of ['opens', 'closes', 'after'] as const) {
      for (const n of (one[field] ?? []).keys())
        at[`steps.${index}.${field}.${n}`] = source.at(['steps', index, field, n]);
    }
    const needs = one.needs ?? [];
    return {
      id: one.id,
      title: one.title,
      detail: one.detail,
      when: (one.when ?? {}) as When,
      each: one.each,
      covers: one.covers ?? [],
      minutes: one.minutes,
      tools: one.tools ?? [],
      supplies: (one.supplies ?? []).map(
        (s): ProcedureSupply => ({ what: s.what, ...s.amount, leadDays: s.leadDays ?? 7, inStock: s.inStock ?? false }),
      ),
      cautions: one.cautions ?? [],
      why: one.why,
      source: one.source ?? 'common practice',
      opens: (one.opens ?? []).map((o) => ({ ...o, safetyCritical: o.safetyCritical ?? false })),
      closes: one.closes ?? [],
      after: one.after ?? [],
      stage: one.stage as ProcedureStep['stage'],
      safetyCritical: one.safetyCritical ?? false,
      doNotRide: one.doNotRide,
      needs: {
        dryDay: needs.includes('dry-day'),
        warmEngine: needs.includes('warm-engine'),
        stand: needs.includes('stand'),
        charger: needs.includes('charger'),
        bench: needs.includes('bench'),
        power: needs.includes('power'),
      },
      deadline: one.deadline === undefined ? undefined : { before: one.deadline },
      waitH: one.waitH ?? 0,
      sameSession: one.sameSession ?? false,
      reading: one.reading,
    };
  });
  return {
    id: name,
    title: value.title,
    phase: value.phase,
    order: value.order ?? 500,
    when: (value.when ?? {}) as When,
    steps,
    file: source.file,
    at,
  };
}
