export type { CoverFigure, EdgeFigure, LayerFigure, PanelDetail, RingFigure } from './figures';
export { boardHoles, type PanelSection, panelSectionOf } from './layers';
export type { PanelPlan } from './panel-plan';
export { planPanel } from './plan-panel';
