export { cautionBlocks, wholePlan } from './caution-blocks';
export { contents } from './contents';
export { drawnPages } from './drawing-pages';
export { type Block, flow, space } from './flow';
export { framed, type Leaf, pageArea, type Paper, PAPER_SIZES, type TitleBlock } from './frame';
export { drawingBlock, leavesOf, paperOf, widthOf } from './leaves';
export { cautionBlock, heading, paragraph, subheading } from './paragraphs';
export { refusedBlocks } from './refused';
export { type Row, table, widest } from './table';
