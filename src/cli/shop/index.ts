export { shopCommand } from './command';
