import { sheetOf, type Job } from '../../job';
import type { Part } from '../../design';
import {
	auditSheets,
	nestRouter,
	nestSaw,
	type Budget,
	type Search,
	type SheetLayout,
	type SheetsAnswer,
} from '../../nest';
import { boardProblem } from './board-problem';
import type { BoardLayouts, SheetSource } from '../layouts';
import { pursue, type Watch } from '../pace';
import { handLaid, type HandLaid, roundHeld, withHeld } from './hand-laid';
import { afterPinned, type Kept, misfitsOf, type Remaining, spoiledOf } from './pinned';
import { sourceOf } from './sheet-stock';

/**
 * Lays all parts of one material on the sheets of the rack and the sheets that can be bought, round
 * what is pinned.
 */
export async function layMaterial(
	job: Job,
	material: string,
	parts: readonly Part[],
	budget: Budget,
	watch: Watch<SheetsAnswer>,
): Promise<BoardLayouts> {
	const whole = boardProblem(job, material, parts);
	const rest = afterPinned(job, material, whole, parts);
	const problem = { ...whole, pieces: rest.pieces, sheets: rest.sheets };
	const hand = handLaid(job, material, problem);
	const found = await layRound(problem, hand, budget, watch);
	const fresh = found.layouts.map((l) => renumbered(l, rest));
	const answer = {
		...found,
		layouts: [...rest.kept.map((k) => k.layout), ...fresh],
		// The bound speaks of the rest alone; a freer plan without the pinned sheets might do with
		// fewer.
		proven:
			found.proven &&
			rest.kept.length === 0 &&
			// What is proven of the cost goes by the price of one.
			(found.layouts.length <= found.bound.sheets || isPlainlyPriced(job, material)),
	};
	return {
		material,
		problem,
		answer,
		sources: [
			...rest.kept.map((k) => keptSource(job, k, parts)),
			...fresh.map((l, i) => ({
				...source(job, l),
				byHand: hand.held[i]?.on ?? null,
			})),
		],
		faults: auditSheets(problem, found),
		refused: hand.refused,
	};
}

/**
 * The rest laid round what lies by hand, its free places first. Cuts there come on top of those
 * that part them off: where that is more than the saw may do, the free places stay free.
 */
async function layRound(
	problem: BoardLayouts['problem'],
	hand: HandLaid,
	budget: Budget,
	watch: Watch<SheetsAnswer>,
): Promise<SheetsAnswer> {
	const lay = async (withFree: boolean): Promise<SheetsAnswer> =>
		withHeld(await pursue(search(roundHeld(problem, hand, withFree), budget), watch), hand);
	const first = await lay(true);
	const holds = hand.held.length === 0 || auditSheets(problem, first).length === 0;
	return holds ? first : lay(false);
}

/** Does every sheet to be bought cost its price, however many are bought? */
function isPlainlyPriced({ stock }: Job, material: string): boolean {
	return stock.sheets
		.filter((s) => s.material === material && s.buy !== 0)
		.every((s) => s.breaks.length === 0 && s.soldBy === 1 && s.least <= 1);
}

function search(problem: BoardLayouts['problem'], budget: Budget): Search<SheetsAnswer> {
	return problem.method === 'saw' ? nestSaw(problem, budget) : nestRouter(problem, budget);
}

/** New layouts number their copies after those that pinned layouts hold. */
function renumbered(layout: SheetLayout, rest: Remaining): SheetLayout {
	const before = new Map<string, number>();
	for (const { layout: l } of rest.kept)
		for (const p of l.placed) before.set(p.id, (before.get(p.id) ?? 0) + 1);
	if (before.size === 0) return layout;
	const sheets = rest.kept.filter((k) => k.layout.sheet === layout.sheet).length;
	const placed = layout.placed.map((p) => ({ ...p, copy: p.copy + (before.get(p.id) ?? 0) }));
	return { ...layout, copy: layout.copy + sheets, placed };
}

function source(job: Job, layout: SheetLayout): SheetSource {
	const { kind, id } = sourceOf(layout.sheet);
	const name = sheetName(job, kind, id);
	return { kind, id, name, pinned: false, cut: false, byHand: null, spoiled: [], misfit: [] };
}

function keptSource(job: Job, { layout, pinned }: Kept, parts: readonly Part[]): SheetSource {
	const { cut } = pinned;
	const misfit = misfitsOf(pinned, parts);
	return { ...source(job, layout), pinned: true, cut, spoiled: spoiledOf(pinned), misfit };
}

function sheetName(job: Job, kind: SheetSource['kind'], id: string): string {
	if (kind === 'offcut') return `offcut ${id}`;
	const sheet = sheetOf(job, id);
	return sheet?.code ? `sheet ${sheet.code}` : `sheet ${id}`;
}
