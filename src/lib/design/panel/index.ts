export type { CoverFigure, EdgeFigure, LayerFigure, PanelDetail, RingFigure } from './figures';
export { type PanelSection, panelSectionOf } from './layers';
export type { PanelPlan } from './panel-plan';
export { planPanel } from './plan-panel';
