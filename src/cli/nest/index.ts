export { nestCommand } from './command';
export { answerNest } from './effort';
export { type NestProblem, readNest } from './problem';
