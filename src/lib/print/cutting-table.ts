import type { BoardLayouts } from '../layout/layouts';
import type { Cut, Gives, SheetLayout } from '../nest/types';
import type { Plan } from '../plan';
import type { Block } from './flow';
import type { Figures } from './figures';
import { table, widest, type Row } from './table';

/** Cuts of one sheet in their order, with fence settings and boxes to tick; a routed sheet lists where its parts lie. */
export function cuttingTable(
	plan: Plan,
	boards: BoardLayouts,
	layout: SheetLayout,
	width: number,
	figures: Figures,
	size?: number,
): Block[] {
	if (boards.problem.method === 'router' || layout.cuts.length === 0)
		return placesTable(plan, layout, width, figures, size);
	const rows = layout.cuts.map((cut, i) => cutRow(plan, cut, layout.cuts[i - 1], figures));
	const fences = layout.cuts.map((c) => figures.bench(c.fence));
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Cut', width: 16 },
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

const KINDS: Readonly<Record<Cut['kind'], string>> = {
	trim: 'trim',
	rip: 'rip',
	cross: 'cross',
	slant: 'slant',
};

function cutRow(plan: Plan, cut: Cut, before: Cut | undefined, figures: Figures): Row {
	const same =
		before?.fence === cut.fence && before.runs === cut.runs && before.fenceEdge === cut.fenceEdge;
	const slant = cut.kind === 'slant';
	return {
		of: `cut:${cut.n}`,
		cells: [
			{ tick: true },
			`${cut.n}  ${KINDS[cut.kind]}`,
			slant ? '' : { text: figures.bench(cut.fence), weight: 'semibold' },
			slant ? 'marked line' : `${cut.fenceEdge} edge${same ? ', same' : ''}`,
			slant ? slantText(plan, cut, figures) : givesText(plan, cut, figures),
		],
	};
}

function slantText(plan: Plan, cut: Cut, figures: Figures): string {
	const spot = (p: Cut['from']) =>
		p === undefined ? '' : `${figures.bench(p.x)}, ${figures.bench(p.y)}`;
	return `from ${spot(cut.from)} to ${spot(cut.to)} (from the datum): ${givesText(plan, cut, figures)}`;
}

function givesText(plan: Plan, cut: Cut, figures: Figures): string {
	const sides = cut.runs === 'x' ? ['below', 'above'] : ['left', 'right'];
	return cut.gives
		.map((give, i) => {
			const what = giveText(plan, give, figures);
			return what === '' ? '' : `${sides[i]!}: ${what}`;
		})
		.filter((t) => t !== '')
		.join('; ');
}

function giveText(plan: Plan, give: Gives, figures: Figures): string {
	switch (give.kind) {
		case 'piece':
			return partLabel(plan, give.id ?? '');
		case 'strip':
			return give.nextCut === undefined ? 'rest' : `strip for cut ${give.nextCut}`;
		case 'offcut':
			return `offcut ${figures.size(give.rect.length, give.rect.width)}`;
		case 'waste':
			return 'waste';
		case 'nothing':
			return '';
	}
}

export function partLabel(plan: Plan, id: string): string {
	return plan.parts.find((p) => p.id === id)?.label ?? id;
}

function placesTable(
	plan: Plan,
	layout: SheetLayout,
	width: number,
	figures: Figures,
	size?: number,
): Block[] {
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
			rows: layout.placed.map((p) => ({
				of: `part:${p.id}`,
				cells: [
					{ tick: true },
					`${partLabel(plan, p.id)} ${plan.parts.find((part) => part.id === p.id)?.name ?? ''}`,
					figures.bench(p.x),
					figures.bench(p.y),
					`${p.turn}°`,
					figures.size(p.length, p.width),
				],
			})),
		},
		width,
	);
}
