export type { Blank, BlankMark, Girth } from './blank';
export { paceOf } from './stages';
export { type BoxWay, wrapBox } from './wrap-box';
export { wrapCovering, type WrapShop } from './wrap-panel';
