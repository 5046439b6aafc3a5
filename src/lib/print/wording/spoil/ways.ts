import type { PlannedAgain, Plan } from '../../../plan';
import { materialName } from '../../../job';
import type { SpoiledAt } from '../../../layout';
import { printMoney, showLength } from '../../../measure';
import { rackLabels, type SheetAt } from '../cut-text';
import { type Figures, figuresOn } from '../figures';
import { partTitle } from '../sheet-text';

/** A way to get a spoiled piece again, as it is told before it is chosen. */
export interface SpoilWayText {
	/** What it is cut from. */
	readonly from: string;
	/** What is done besides, a sentence; '' for nothing. */
	readonly besides: string;
	/** Where it lies there, what it costs and what stays, a sentence each. */
	readonly says: readonly string[];
	/** Can it be had this way at all? */
	readonly works: boolean;
}

const UNNEEDED = {
	from: 'Nothing is cut again: the job needs no more of it',
	besides: '',
	works: true,
};

/** The ways beside each other, cheapest first; of two that come to the same, one. */
export function spoilWayTexts(
	before: Plan,
	ways: readonly PlannedAgain[],
	at: SpoiledAt,
): SpoilWayText[] {
	return ways.map((way) => wayText(before, way, at));
}

function wayText(before: Plan, way: PlannedAgain, at: SpoiledAt): SpoilWayText {
	const { plan } = way;
	const cost = costText(before, plan);
	const id = pieceAt(before, at)?.id ?? '';
	if (at.of === 'cloth') return clothText(before, plan, id, at.cloth, cost);
	const boards = plan.boards.find((b) => b.material === at.material);
	const made = (of: Plan): number =>
		of.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.placed)).filter((p) => p.id === id)
			.length;
	const why = boards?.answer.unplaced.find((u) => u.id === id);
	if (why)
		return {
			from: 'It can be cut from nothing there is',
			besides: '',
			says: [why.why.replaceAll(id, partTitle(plan, id)), 'Put a sheet on the rack that takes it.'],
			works: false,
		};
	if (!boards || made(plan) <= made(before)) return { ...UNNEEDED, says: [cost] };
	const [index, place] = newest(boards, id);
	const on: SheetAt = { plan, boards, index };
	return {
		from: fromText(before, on),
		besides: way.by === 'planned' ? 'The sheets still to be cut are laid out anew.' : '',
		says: [lieText(on, place), cost, staysText(on)],
		works: true,
	};
}

/** The piece that is asked about, on its sheet or cloth. */
export function pieceAt(of: Plan, at: SpoiledAt) {
	return at.of === 'board'
		? of.boards.find((b) => b.material === at.material)?.answer.layouts[at.index]?.placed[at.place]
		: rollsIn(of, at.cloth)[at.index]?.answer.placed[at.place];
}

/** Every length of a cloth, those that are pulled first. */
const rollsIn = ({ cloths }: Plan, cloth: string) =>
	cloths.flatMap((c) => (c.cloth === cloth ? c.rolls : []));

/** Where the piece with the highest number of its kind lies: the one that came last. */
function newest(boards: SheetAt['boards'], id: string): readonly [number, number] {
	const all = boards.answer.layouts.flatMap((l, i) =>
		l.placed.flatMap((p, at) => (p.id === id ? [{ i, at, copy: p.copy }] : [])),
	);
	const last = all.reduce((a, b) => (b.copy > a.copy ? b : a), { i: 0, at: 0, copy: -1 });
	return [last.i, last.at];
}

function fromText(before: Plan, { plan, boards, index }: SheetAt): string {
	const layout = boards.answer.layouts[index];
	const source = boards.sources[index];
	if (!layout || !source) return '';
	const size = figuresOn(plan.job.shop.ruler).size(layout.length, layout.width);
	const others = layout.placed.length - 1;
	const beside = others > 0 ? `, beside ${others === 1 ? '1 part' : `${others} parts`}` : '';
	if (source.kind === 'offcut') {
		const isOwn = before.job.pinned.some((p) => p.offcuts.some((o) => o.label === source.id));
		const own = isOwn ? ', which fell off a sheet of this job' : ' of the rack';
		return `From offcut ${source.id}, ${size}${own}${beside}`;
	}
	const kind = source.kind === 'buy' ? 'to buy' : 'of the rack';
	// Where another size is bought for all, there was no free room.
	const isFree = plan.order.total === before.order.total;
	const which = others === 0 ? 'From' : isFree ? 'In the free room of' : 'With others on';
	return `${which} a sheet ${kind}, ${size} (${materialName(plan.job, boards.material)})${beside}`;
}

function lieText({ plan, boards, index }: SheetAt, place: number): string {
	const figures = figuresOn(plan.job.shop.ruler);
	const piece = boards.answer.layouts[index]?.placed[place];
	if (!piece) return '';
	const [x, y] = [figures.bench(piece.x), figures.bench(piece.y)];
	return `It lies ${x} ${figures.unit} from the left and ${y} ${figures.unit} from the bottom of sheet ${index + 1}.`;
}

/** What it costs beside what was to be spent before. */
function costText(before: Plan, after: Plan): string {
	const { currency, ruler } = after.job.shop;
	const money = (minor: number): string => printMoney(minor as never, currency, ruler.decimal);
	const buys = after.order.total - before.order.total;
	const all = after.quote.spoil.cost - before.quote.spoil.cost;
	const bought = buys === 0 ? 'Nothing more is bought' : `${money(buys)} more is bought`;
	return `${bought}; with what comes off the rack and the work it costs ${money(all)}.`;
}

function staysText(at: SheetAt): string {
	const figures: Figures = figuresOn(at.plan.job.shop.ruler);
	const offcuts = at.boards.answer.layouts[at.index]?.offcuts ?? [];
	if (offcuts.length === 0) return 'Nothing is left over that is worth racking.';
	const labels = rackLabels(at);
	const told = offcuts.map((o, i) =>
		`${labels[i] ?? ''} ${figures.size(o.length, o.width)}`.trim(),
	);
	return `Left over: ${told.join(', ')}.`;
}

function clothText(
	before: Plan,
	plan: Plan,
	id: string,
	cloth: string,
	cost: string,
): SpoilWayText {
	const unplaced = plan.cloths.flatMap((c) => (c.cloth === cloth ? c.unplaced : []));
	const why = unplaced.find((u) => u.id === id);
	if (why) {
		const from = 'It can be cut from no roll there is';
		return { from, besides: '', says: [why.why], works: false };
	}
	const open = (of: Plan) => rollsIn(of, cloth).filter((r) => !r.pulled);
	const roll = open(plan).find((r) => r.answer.placed.some((p) => p.id === id));
	if (!roll) return { ...UNNEEDED, says: [cost] };
	const pull = (of: Plan): number => open(of).reduce((sum, r) => sum + r.pull, 0);
	const { ruler } = plan.job.shop;
	const more = showLength(Math.max(0, pull(plan) - pull(before)) as never, ruler);
	const from = roll.owned ? `From roll ${roll.roll} of the rack` : `From roll ${roll.roll}, to buy`;
	return { from, besides: '', says: [`${more} more of it is pulled.`, cost], works: true };
}
