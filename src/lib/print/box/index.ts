export { boardDrawings } from './board-drawings';
export { boxDrawings } from './drawings';
export { boxPicture, movedApart } from './exploded';
export { boxPages } from './pages';
export { responseDrawings } from './response';
export { leanText } from './tables';
