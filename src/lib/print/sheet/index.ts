export { cuttingListPages } from './cutting-list-pages';
export { materialName, sheetDrawing } from './drawing';
export { sheetPages } from './pages';
