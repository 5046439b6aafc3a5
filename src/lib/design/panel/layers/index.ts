export { layerFigures } from './layers';
export { checkLies } from './lies';
export { panelParts } from './pieces';
export { checkRims, checkTurnUnder } from './rims';
export { ringFigures } from './rings';
export { type PanelSection, panelSectionOf } from './section';
export { coveringsOf, foamedOf } from './surfaces';
export { checkZones, zoneFigures } from './zones';
