export { type PlannedTogether, planTogether } from './plan-together';
