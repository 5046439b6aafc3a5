export type { Cover, Ring } from './cover';
export { type Device, device, type Zone } from './device';
export { drawing, type OutlineDrawing } from './drawing';
export type { EdgeChoice, EdgeChoices } from './edge';
export type { Layer, PanelWindow } from './layer';
export type { OutlineShape, PlacedShape } from './outline';
export { type Panel, panel } from './panel';
