export { solveBox } from './solve';
