export { type Heights, ROOMY, stripBlocks, stripWork } from './strip-blocks';
