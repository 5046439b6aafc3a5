export { writeSvg } from './svg';
