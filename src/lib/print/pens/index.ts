export { writePdf } from './pdf';
export { drawingSvg, madeByPen } from './svg';
