export { boxDrawings } from './drawings';
export { boxPages } from './pages';
export { leanText } from './tables';
export { responseDrawings } from './response';
