export { panelAssembly } from './assembly';
export { needsOf } from './needs';
export { leftHand, rightCovering, rightPart } from './pair';
