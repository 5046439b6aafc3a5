export { markSpoiled, type SpoiledAt, spoilRefusal } from './mark';
export { laySound } from './sound';
export { type WayAgain, waysAgain } from './ways';
