export { boxStage } from './box-stage';
export { keyMove, markOf } from './drag';
export { panelStage } from './panel-stage';
export { pathData } from './path-data';
export { default as Stage } from './Stage.svelte';
export type { StageView } from './stage-view';
