export { bestPlan, cutPlan, limitsOf, worthKeeping } from './cut-plan';
export { sequenceOf } from './fence';
export { type FenceSetting, sameSetting, settingsFor } from './fence-setting';
export type { FenceLimits, FenceStep, Sequence } from './held';
export type { SawRegion } from './regions';
