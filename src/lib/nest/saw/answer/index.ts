export { boundMet, meetsBound, sawAnswer } from './answer';
export { type Content, SawBench } from './cuts';
export { pairOnSheet } from './pair-on-sheet';
export { cornersOff } from './taper-cuts';
export { trimCuts } from './trims';
