export type { Blank, BlankMark, Girth } from './blank';
export { clothMass } from './mass';
export { wrapShop } from './shop';
export { type Gluing, gluingOf } from './stages';
export { type CarpetOffer, type ClothOffer, wrapAll } from './wrap-all';
export type { BoxWay } from './wrap-box';
export { wrapCovering } from './wrap-panel';
