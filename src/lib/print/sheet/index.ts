export { sheetDrawing } from './drawing';
export { sheetPages } from './pages';
