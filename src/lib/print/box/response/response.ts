import type { BoxFigures, ResponseFigures, ResponsePoint } from '../../../design';
import type { Ruler } from '../../../measure';
import type { Drawing } from '../../drawing';
import {
	type Block,
	type Cell,
	drawingBlock,
	space,
	subheading,
	table,
	sentence,
} from '../../page';
import { responseColumns } from '../../wording';
import { responseDrawing } from './curves';

/** The curves of every chamber that has them. */
export function responseDrawings(name: string, box: BoxFigures, ruler: Ruler): Drawing[] {
	return box.responses.map((r) => responseDrawing(titled(name, r, box), r, ruler));
}

const titled = (name: string, { chamber }: ResponseFigures, box: BoxFigures): string =>
	box.chambers.length > 1 ? `${name}, chamber ${chamber}` : name;

/** Curves, the same numbers in a table, and what they mean. */
export function responseBlocks(
	name: string,
	box: BoxFigures,
	width: number,
	ruler: Ruler,
): Block[] {
	return box.responses.flatMap((response) => {
		const drawing = responseDrawing(titled(name, response, box), response, ruler);
		return [
			space(4),
			subheading(drawing.title, width),
			drawingBlock(drawing, width, Infinity),
			...sentence(response.says, width),
			space(2),
			...figuresTable(response, width, ruler),
		];
	});
}

/** The lower half of the frequencies beside the upper one. */
function figuresTable(response: ResponseFigures, width: number, ruler: Ruler): Block[] {
	const columns = responseColumns(response, ruler);
	const { thirds } = response;
	const half = Math.ceil(thirds.length / 2);
	const cells = (p: ResponsePoint | undefined): Cell[] =>
		columns.map((c) => (p === undefined ? '' : c.text(p)));
	const heads = columns.map(({ head }) => ({ head, width: { share: 1 }, align: 'end' as const }));
	return table(
		{
			columns: [...heads, { head: '', width: 4 }, ...heads],
			rows: thirds.slice(0, half).map((p, i) => ({
				cells: [...cells(p), '', ...cells(thirds[half + i])],
			})),
			size: 2.9,
		},
		width,
	);
}
