export { Finishing } from './finishing';
export { better, firstLayout, moreFirstLayouts } from './first-layout';
export { searchState, type SearchState } from './open-sheet';
export type { LayoutSnapshot } from './partial-layout';
export { RuinAndRecreate } from './ruin-and-recreate';
