export { crossCheck } from './cross';
