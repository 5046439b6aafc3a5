export { importShape } from './import-shape';
export { type Squared, squareUp } from './square-up';
export { photographedPaperOf } from './traced';
