export { type Heights, ROOMY, stripBlocks } from './strip-blocks';
