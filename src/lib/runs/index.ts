export { leftToCut } from './left-to-cut';
export { planRuns } from './plan-runs';
export { inMetres, layReels, type ReelLength, type ReelPlan } from './reels';
export type { RunEnd, RunPlan } from './run-plan';
