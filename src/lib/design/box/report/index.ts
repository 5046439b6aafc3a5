export { chambersOf, netOf } from './chamber';
export { figuresOf } from './figures';
export { fitOf, outsidePoints, sizesOf } from './fit';
export { personsFor } from './lifting';
