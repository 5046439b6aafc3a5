export { chambersOf, netOf } from './chamber';
export { figuresOf } from './figures';
export { clothed, clothSides, fitOf, outsidePoints, sizesOf } from './fit';
export { personsFor } from './lifting';
