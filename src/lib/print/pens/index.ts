export { writePdf } from './pdf';
export { drawingSvg } from './svg';
