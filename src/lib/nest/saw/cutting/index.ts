export { cutPlan, limitsOf, worthKeeping } from './cut-plan';
export { type FenceLimits, type FenceStep, type Sequence, sequenceOf } from './fence';
export { type FenceSetting, sameSetting, settingsFor } from './fence-setting';
export type { SawRegion } from './regions';
