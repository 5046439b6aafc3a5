export { notch, slit } from './cuts';
export type { ReliefPlace } from './places';
export { type ReliefRule, type Reliefs, reliefsOf } from './reliefs';
