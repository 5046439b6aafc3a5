import type { Plan } from '../../plan';
import { cautionBlocks, type Shown } from './caution-blocks';
import type { Drawing } from '../drawing';
import type { Figures } from '../wording';
import { space, type Block } from './flow';
import { pageArea } from './paper';
import type { Leaf } from './setting';
import { drawingRows } from './beside';
import { leavesOf, paperOf, widthOf } from './leaves';
import { heading, paragraph } from './paragraphs';

/** One box, panel or cloth and all that is drawn of it. */
interface DrawnItem extends Shown {
	readonly name: string;
	/** Said at the right end of the heading. */
	readonly note: string;
	/** The person's own words, under the heading. */
	readonly words?: readonly string[];
	readonly drawings: readonly Drawing[];
	/** Blocks under the first drawing, before the next. */
	readonly afterFirst?: readonly Block[];
	/** Drawings made smaller, where that spares a page. */
	readonly smaller?: () => readonly Drawing[];
	/** Blocks under the drawings: a table with the same numbers. */
	readonly below?: readonly Block[];
	readonly figures: Figures;
}

/** Drawings one under the other, each with its title, on as many pages as they take. */
export function drawnPages(plan: Plan, drawn: DrawnItem): Leaf[] {
	if (drawn.drawings.length === 0 && (drawn.below ?? []).length === 0) return [];
	const width = widthOf(plan);
	const most = pageArea(paperOf(plan)).height - 30;
	const cautions = cautionBlocks(plan, drawn, width);
	const head: Block[] = [
		heading(drawn.name, width, drawn.note),
		...(drawn.words ?? []).filter((t) => t !== '').map((t) => paragraph(t, width)),
		...cautions,
	];
	// With the first drawing: no heading stands at a page's foot, its cautions alone under it.
	const kept = head.map((block) => ({ ...block, keep: true }));
	const below = drawn.below === undefined ? [] : [space(3), ...drawn.below];
	const rows = (drawings: readonly Drawing[]): Block[] => drawingRows(drawings, width, most);
	const leaves = leavesOf(
		plan,
		{ name: drawn.name, title: drawn.name, ...otherWay(drawn, rows, kept, below) },
		[...kept, ...inOrder(drawn, rows), ...below],
		drawn.figures,
	);
	const fault = drawn.drawings.find((d) => d.fault !== undefined)?.fault;
	return fault === undefined ? leaves : leaves.map((leaf) => ({ ...leaf, fault }));
}

type Rows = (drawings: readonly Drawing[]) => Block[];

function inOrder({ drawings, afterFirst = [] }: DrawnItem, rows: Rows): Block[] {
	const inFront = afterFirst.length === 0 ? drawings.length : 1;
	return [...rows(drawings.slice(0, inFront)), ...afterFirst, ...rows(drawings.slice(inFront))];
}

/** Smaller drawings; or what belongs under the first one before it. */
function otherWay(
	{ drawings, afterFirst = [], smaller }: DrawnItem,
	rows: Rows,
	head: readonly Block[],
	below: readonly Block[],
): Pick<Leaf, 'instead'> {
	if (smaller) return { instead: () => [...head, ...rows(smaller()), ...below] };
	if (afterFirst.length === 0) return {};
	return { instead: () => [...head, ...afterFirst, ...rows(drawings), ...below] };
}
