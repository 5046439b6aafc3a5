export { boundOf } from './bound';
export { sameSetting, settingsFor } from './cutting';
export { sawModel, wordsOf } from './model';
export { type Pair, taperOf } from './pairs';
export { nestSaw } from './saw';
