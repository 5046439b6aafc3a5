import { nth } from '../../measure';
import { offcutName, partTitle, type SheetAt, type Figures } from '../wording';
import { type Block, table } from '../page';

/** Where the parts of a routed sheet lie, with boxes to tick. */
export function routedTable(at: SheetAt, width: number, figures: Figures): Block[] {
	const { plan, boards, index } = at;
	const layout = nth(boards.answer.layouts, index);
	const offcuts = layout.offcuts.map((o) => ({
		cells: [
			{ tick: true } as const,
			offcutName(at, o),
			figures.bench(o.x),
			figures.bench(o.y),
			'',
			figures.size(o.length, o.width),
		],
	}));
	const parts = layout.placed.map((p) => ({
		of: `part:${p.id}`,
		cells: [
			{ tick: true } as const,
			partTitle(plan, p.id),
			figures.bench(p.x),
			figures.bench(p.y),
			`${p.turn}°`,
			figures.size(p.length, p.width),
		],
	}));
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Part', width: { share: 1 } },
				{ head: 'From left', width: 22, align: 'end' },
				{ head: 'From bottom', width: 22, align: 'end' },
				{ head: 'Turned', width: 16, align: 'end' },
				{ head: 'Size as it lies', width: 36, align: 'end' },
			],
			rows: [...parts, ...offcuts],
		},
		width,
	);
}
