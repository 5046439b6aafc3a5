export { panelDrawings, panelViews, pieceDrawings } from './drawings';
export { panelPages } from './pages';
export { panelPicture, pictureView } from './picture';
