export { answerNest } from './effort';
export { nestCommand } from './command';
export { type NestProblem, readNest } from './problem';
