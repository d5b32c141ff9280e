export { orderWarnings } from './order-warnings.ts';
export { type SupplyMachine, sumSupplies, supplyNeeds } from './sum-supplies.ts';
