export { panelDrawings } from './drawings';
export { panelPages } from './pages';
export { panelPicture } from './picture';
