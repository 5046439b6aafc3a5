export { nestCommand } from './command';
