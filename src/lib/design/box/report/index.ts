export { chambersOf, netOf } from './chamber';
export { clothOn, clothRound } from './cloth-round';
export { figuresOf } from './figures';
export { fitOf, outerBoards, outsidePoints, sizesOf } from './fit';
export { personsFor } from './lifting';
