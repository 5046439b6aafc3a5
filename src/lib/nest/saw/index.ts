export { boundOf } from './bound';
export { sawModel } from './model';
export { type Pair, taperOf } from './pairs';
export { nestSaw } from './saw';
