export { chambersOf, netOf } from './chamber';
export { figuresOf } from './figures';
export { clothOn, clothRound, fitOf, outerBoards, outsidePoints, sizesOf } from './fit';
export { personsFor } from './lifting';
