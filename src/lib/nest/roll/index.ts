export type { RollDeck } from './kinds';
export { nestRoll } from './roll';
export { Skyline } from './skyline';
