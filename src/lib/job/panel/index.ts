export type { Cover, Ring } from './cover';
export type { Device, Zone } from './device';
export type { EdgeChoice, EdgeChoices } from './edge';
export type { Layer, PanelWindow } from './layer';
export { drawing, type OutlineDrawing, type OutlineShape, type PlacedShape } from './outline';
export { panel, type Panel } from './panel';
