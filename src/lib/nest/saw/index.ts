export { type Content, cornersOff, pairOnSheet, SawBench, trimCuts } from './answer';
export { boundOf } from './bound';
export { bestPlan, sameSetting, type SawRegion, settingsFor, worthKeeping } from './cutting';
export { sawModel, wordsOf } from './model';
export { type Pair, slantedSides, taperOf } from './pairs';
export { nestSaw } from './saw';
