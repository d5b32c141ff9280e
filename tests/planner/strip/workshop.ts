/** Invented assemblies and jobs for the tests of strip-down and supplies. */
import type { Assembly, Fastener, Job } from '../../../src/planner/household.ts';

export function assembly(id: string, behind: string[] = [], over: Partial<Assembly> = {}): Assembly {
  return {
    id,
    name: id,
    behind,
    offMinutes: 10,
    onMinutes: 15,
    fasteners: [],
    singleUse: [],
    cautions: [],
    refitNotes: [],
    replaceNextTime: [],
    safetyCritical: false,
    ...over,
  };
}

export function job(id: string, assemblies: string[] = [], over: Partial<Job> = {}): Job {
  return {
    id,
    name: id,
    assemblies,
    minutes: 60,
    parts: [],
    tools: [],
    cautions: [],
    notes: [],
    after: [],
    needs: { stand: false, bench: false },
    done: false,
    ...over,
  };
}

export function fastener(over: Partial<Fastener> = {}): Fastener {
  return { what: 'bolt', count: 1, head: 'hex 10 mm', condition: 'dry', antiSeize: false, banjo: false, ...over };
}

/** Fifteen assemblies, from the seat to the cylinder heads, and five jobs that share what stands in front. */
export const FIFTEEN: Assembly[] = [
  assembly('cylinder-heads', ['rocker-covers', 'exhaust', 'carburettors', 'oil-lines']),
  assembly('seat'),
  assembly('side-covers', ['seat']),
  assembly('tank', ['seat', 'side-covers']),
  assembly('airbox', ['side-covers', 'battery']),
  assembly('battery', ['seat']),
  assembly('carburettors', ['tank', 'airbox']),
  assembly('throttle-cables', ['tank']),
  assembly('rocker-covers', ['tank', 'coils']),
  assembly('coils', ['tank']),
  assembly('exhaust'),
  assembly('oil-lines', ['rocker-covers']),
  assembly('front-wheel'),
  assembly('calipers', [], { safetyCritical: true }),
  assembly('fork', ['front-wheel', 'calipers']),
];

export const FIVE: Job[] = [
  job('valves', ['rocker-covers']),
  job('carburettor-clean', ['carburettors']),
  job('new-cables', ['throttle-cables'], { after: ['carburettor-clean'] }),
  job('fork-oil', ['fork'], { needs: { stand: true, bench: false } }),
  job('head-gasket', ['cylinder-heads'], { after: ['valves'] }),
];
