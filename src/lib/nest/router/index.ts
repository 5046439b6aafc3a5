export { packSheets } from './maxrects';
export { readyRouter } from './model';
export { nestRouter } from './router';
