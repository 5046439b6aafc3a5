export { partDrawings } from './part-drawings';
export { workBlocks } from './work-blocks';
