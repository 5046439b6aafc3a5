export { MOST_JOBS, type PlannedTogether, planTogether } from './plan-together';
