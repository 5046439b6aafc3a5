export { readSvg } from './svg';
