import { nth } from '../../measure';
import { sameSetting, type Cut } from '../../nest';
import {
	cutGives,
	cutKind,
	cutSetting,
	offcutName,
	partTitle,
	type SheetAt,
	type Figures,
} from '../wording';
import { type Block, table, widest, type Row } from '../page';

/**
 * Cuts of one sheet in their order, with fence settings and boxes to tick; a routed sheet lists
 * where its parts lie.
 */
export function cuttingTable(at: SheetAt, width: number, figures: Figures, size?: number): Block[] {
	const { boards, index } = at;
	const layout = nth(boards.answer.layouts, index);
	if (boards.problem.method === 'router' || layout.cuts.length === 0)
		return placesTable(at, width, figures, size);
	const rows = layout.cuts.map((cut, i) => cutRow(at, cut, layout.cuts[i - 1], figures));
	const fences = layout.cuts.map((c) => figures.bench(c.fence));
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Cut', width: widest(['Cut', ...layout.cuts.map(cutName)]) },
				{ head: 'Fence', width: widest(['Fence', ...fences]), align: 'end' },
				{ head: 'From', width: 27 },
				{ head: 'Gives', width: { share: 1 } },
			],
			rows,
			...(size === undefined ? {} : { size }),
		},
		width,
	);
}

function cutName(cut: Cut): string {
	return `${cut.n}  ${cutKind(cut)}`;
}

function cutRow(at: SheetAt, cut: Cut, before: Cut | undefined, figures: Figures): Row {
	const same = before !== undefined && sameSetting(before, cut);
	const set = cutSetting(at, cut, figures);
	return {
		of: `cut:${cut.n}`,
		cells: [
			{ tick: true },
			cutName(cut),
			set.fence === '' ? '' : { text: set.fence, weight: 'semibold' },
			same ? `${set.from}, same` : set.from,
			cutGives(set),
		],
	};
}

function placesTable(at: SheetAt, width: number, figures: Figures, size?: number): Block[] {
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
			...(size === undefined ? {} : { size }),
			rows: [...parts, ...offcuts],
		},
		width,
	);
}
