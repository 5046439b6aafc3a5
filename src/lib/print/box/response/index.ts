export { responseBlocks, responseDrawings } from './response';
