export { type CutPlace, notch, slit } from './cuts';
export { type InsideCorner, insideCorners } from './places';
export { type ReliefRule, type Reliefs, reliefsOf } from './reliefs';
export { type Give, insideRadius, outsideRadius, shrinkAsked, stretchAsked } from './strain';
