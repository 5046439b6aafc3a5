export { clothOn, clothRound } from './cloth-round';
export { fitOf, outerBoards, outsidePoints, sizesOf } from './fit';
