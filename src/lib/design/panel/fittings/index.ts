export { coverFigures } from './covers';
export { checkDevices, deviceFigures, drillsOf } from './devices';
export { fixingFigure } from './fixings';
export { checkGroove, grooveFigure, type GrooveObstacle, grooveSize } from './groove';
export { hingeFigures, hingeLeaves } from './hinges';
export { seamLines } from './seams';
