export { layoutJson, rollJson } from './answer';
export { nestCommand } from './command';
