export { blankDrawings } from './blank-drawings';
export { rollDrawing } from './roll-drawing';
export { byRectangles, rollPages } from './roll-pages';
