export { checkCommand, planCommand } from './command';
