export { readDxf } from './dxf';
