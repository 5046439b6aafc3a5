export { sheetDrawing, sheetView } from './drawing';
export { sheetPages } from './pages';
