export { cuttingListPages } from './cutting-list-pages';
export { sheetDrawing } from './drawing';
export { sheetPages } from './pages';
