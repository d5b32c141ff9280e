export { orderWarnings } from './order-warnings.ts';
export { type SupplyMachine, sumSupplies } from './sum-supplies.ts';
