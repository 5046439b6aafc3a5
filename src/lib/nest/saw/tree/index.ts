export {
	AXIS_X,
	AXIS_Y,
	FIRST,
	H,
	KIND,
	LEAF,
	NEXT,
	NONE,
	PARENT,
	SlackTree,
	STRIDE,
	typeOf,
	W,
} from './slack-tree';
export { SlotList } from './slots';
