export { panelDrawings } from './drawings';
export { panelPages } from './pages';
