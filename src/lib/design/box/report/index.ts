export { chambersOf, netOf } from './chamber';
export { figuresOf } from './figures';
export { clothOn, clothRound } from './cloth-round';
export { fitOf, outerBoards, outsidePoints, sizesOf } from './fit';
export { personsFor } from './lifting';
