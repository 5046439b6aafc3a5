export { runsPages } from './pages';
export { cutFromText, endsText, inCuttingOrder, LENGTHS_ONLY } from './words';
