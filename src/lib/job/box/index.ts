export { box, type Box } from './box';
export type { BoxDevice } from './device';
export type { Driver } from './driver';
export type { BoardKey, BoxSpot } from './fields';
export type { Brace, Cleats, Divider } from './inside';
export { type Carpet, clothOnFace } from './place';
export type { BoxShape, Dimension, ShapeOf } from './shape';
export type { TieDown } from './tie-down';
export type { RoundVent, SlotVent, Vent } from './vent';
