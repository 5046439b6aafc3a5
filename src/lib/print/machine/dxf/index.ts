export { writeDxf } from './dxf';
