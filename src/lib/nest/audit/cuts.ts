import { nth } from '../../measure';
import type { Rect } from '../../geometry';
import type { AuditFault, Cut, Gives, SawProblem, Sheet, SheetLayout } from '../types';

/*
 * Makes every cut again on a sheet of its own: each must go through the whole of a region that is
 * really there, what it gives must add up with the kerf to that region, and at the end every piece
 * and offcut must have come out of the saw.
 */

interface Board {
	readonly rect: Rect;
	readonly expected: number | undefined; // the cut that should take it up
	readonly stage: number;
	readonly runs: Cut['runs'] | null;
}

const keyOf = (r: Rect): string => `${r.x} ${r.y} ${r.length} ${r.width}`;

export class CutAudit {
	readonly faults: AuditFault[] = [];
	/** By their rectangle: without a kerf both halves of a slanted cut may have the same. */
	private readonly boards = new Map<string, Board[]>();
	private readonly pieces: string[] = []; // rect and id
	private readonly offcuts = new Set<string>();

	constructor(
		private readonly problem: SawProblem,
		private readonly sheet: Sheet,
		private readonly layout: SheetLayout,
		private readonly where: string,
	) {}

	run(): AuditFault[] {
		const { length, width, cuts } = this.layout;
		const whole = { x: 0, y: 0, length, width };
		this.boards.set(keyOf(whole), [{ rect: whole, expected: undefined, stage: 0, runs: null }]);
		cuts.forEach((cut, i) => this.cut(cut, i + 1));
		this.finish(whole);
		return this.faults;
	}

	private fault(cut: Cut | null, what: string): void {
		this.faults.push({ where: cut ? `${this.where}, cut ${cut.n}` : this.where, what });
	}

	private cut(cut: Cut, n: number): void {
		const board = this.taken(cut.region, n);
		if (cut.n !== n) this.fault(cut, `It should be number ${n}.`);
		if (!board) return this.fault(cut, 'The board it is cut from is not there.');
		if (board.expected !== undefined && board.expected !== n)
			this.fault(cut, `The board was to be taken up by cut ${board.expected}.`);
		const counts = cut.kind === 'rip' || cut.kind === 'cross';
		const stage = counts && board.runs !== cut.runs ? board.stage + 1 : board.stage;
		if (this.problem.stages !== null && stage > this.problem.stages)
			this.fault(cut, `Stage ${stage}; the limit is ${this.problem.stages}.`);
		if (cut.kind !== 'slant') this.straight(cut);
		for (const side of cut.gives) this.give(cut, side, stage, counts ? cut.runs : board.runs);
	}

	/** The board that lies there, the one meant for this cut where there are two; taken away. */
	private taken(region: Rect, n: number): Board | undefined {
		const lying = this.boards.get(keyOf(region)) ?? [];
		const board = lying.find(({ expected }) => expected === n) ?? lying[0];
		this.boards.set(
			keyOf(region),
			lying.filter((other) => other !== board),
		);
		return board;
	}

	/** Both sides and the kerf add up to the region, and the fence stands where it says. */
	private straight(cut: Cut): void {
		const { region, at } = cut;
		const isX = cut.runs === 'y';
		const [start, end] = isX
			? [region.x, region.x + region.length]
			: [region.y, region.y + region.width];
		const [lowEnd, highStart] = this.kerfOf(cut, start, end);
		const span = (from: number, to: number): Rect =>
			isX ? { ...region, x: from, length: to - from } : { ...region, y: from, width: to - from };
		const [low, high] = cut.gives;
		if (at < start || at > end) this.fault(cut, 'The cut lies outside the board.');
		if (at !== lowEnd) this.fault(cut, 'The blade does not run where the trim ends.');
		if (!sameSide(low, span(start, lowEnd), isX))
			this.fault(cut, 'The lower side does not add up.');
		if (!sameSide(high, span(highStart, Math.max(highStart, end)), isX))
			this.fault(cut, 'The upper side does not add up.');
		const nearLow = cut.fenceEdge === 'left' || cut.fenceEdge === 'bottom';
		if (cut.fence !== (nearLow ? lowEnd - start : end - highStart))
			this.fault(cut, 'The fence setting is not the distance to the blade.');
		this.reach(cut);
	}

	/**
	 * Where the kerf starts and ends. A trim may be thinner than the blade, which then hangs over
	 * the edge.
	 */
	private kerfOf(cut: Cut, start: number, end: number): [number, number] {
		const { kerf } = this.problem;
		if (cut.kind !== 'trim') return [cut.at, Math.min(end, cut.at + kerf)];
		const { trim } = this.sheet;
		const low = cut.gives[0].kind !== 'strip' && cut.gives[0].kind !== 'piece';
		if (low) {
			const t = cut.runs === 'y' ? trim.left : trim.bottom;
			return [start + Math.max(0, t - kerf), start + t];
		}
		const t = cut.runs === 'y' ? trim.right : trim.top;
		return [end - t, end - Math.max(0, t - kerf)];
	}

	private reach(cut: Cut): void {
		const { fenceLimit, narrowestRip } = this.problem;
		if (cut.kind === 'trim') return;
		if (fenceLimit !== null && cut.fence > fenceLimit)
			this.fault(cut, 'The fence cannot be set that far.');
		if (narrowestRip !== null && cut.fence < narrowestRip)
			this.fault(cut, 'What lies against the fence is too narrow to be held.');
	}

	private give(cut: Cut, side: Gives, stage: number, runs: Cut['runs'] | null): void {
		const key = keyOf(side.rect);
		if (side.kind === 'strip') {
			const board = { rect: side.rect, expected: side.nextCut, stage, runs };
			this.boards.set(key, [...(this.boards.get(key) ?? []), board]);
		}
		if (side.kind === 'piece') this.pieces.push(`${key} ${side.id ?? ''}`);
		if (side.kind === 'offcut') this.offcuts.add(key);
		if ((side.kind === 'nothing') !== (side.rect.length === 0 || side.rect.width === 0))
			this.fault(cut, 'A side is called nothing that is something, or the reverse.');
	}

	private finish(whole: Rect): void {
		const { placed, offcuts, cuts } = this.layout;
		if (cuts.length === 0 && placed.length === 1) {
			if (keyOf(nth(placed, 0)) !== keyOf(whole)) this.fault(null, 'The piece was never cut out.');
			return;
		}
		const cutOut = [...this.pieces];
		for (const p of placed) {
			const found = cutOut.indexOf(`${keyOf(p)} ${p.id}`);
			if (found < 0) this.fault(null, `${p.id} was never cut out.`);
			else cutOut.splice(found, 1);
		}
		if (this.pieces.length !== placed.length)
			this.fault(null, 'The cuts give other pieces than those laid.');
		for (const b of [...this.boards.values()].flat())
			this.fault(null, `A board of ${b.rect.length} x ${b.rect.width} ticks is left over uncut.`);
		const listed = new Set(offcuts.map(keyOf));
		if (listed.size !== this.offcuts.size || [...listed].some((k) => !this.offcuts.has(k)))
			this.fault(null, 'The offcuts listed are not those that the cuts give.');
	}
}

/** A side that fell to nothing needs no exact place. */
function sameSide(side: Gives, rect: Rect, isX: boolean): boolean {
	if (side.kind === 'nothing') return (isX ? rect.length : rect.width) === 0;
	return keyOf(side.rect) === keyOf(rect);
}
