export { type AgendaInput, placeable, planAgenda } from './plan-agenda.ts';
export { type Agenda, type AgendaTask, taskKey } from './types.ts';
export { type ChangedPlan, whatChanges } from './what-changes.ts';
