export { FACES, useFace } from './face';
