export { blankDrawings } from './blank-drawings';
export { rollDrawing } from './roll-drawing';
export { rollPages } from './roll-pages';
