import type { BoxFigures, ResponseFigures, ResponsePoint } from '../../../design';
import type { Ruler } from '../../../measure';
import type { Drawing } from '../../drawing';
import { type Block, drawingBlock, type Row, space, subheading, table, sentence } from '../../page';
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
		const columns = responseColumns(response, ruler);
		const row = (p: ResponsePoint): Row => ({ cells: columns.map((c) => c.text(p)) });
		return [
			space(4),
			subheading(drawing.title, width),
			drawingBlock(drawing, width, Infinity),
			...sentence(response.says, width),
			space(2),
			...table(
				{
					columns: columns.map((c) => ({
						head: c.head,
						width: { share: 1 },
						align: 'end' as const,
					})),
					rows: response.thirds.map(row),
					size: 2.9,
				},
				width * 0.8,
			),
		];
	});
}
