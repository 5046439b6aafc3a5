export { drawShape, placeShape } from './draw-shape';
export { fitPanel } from './fit';
export { grownBy, windowFigures } from './windows';
