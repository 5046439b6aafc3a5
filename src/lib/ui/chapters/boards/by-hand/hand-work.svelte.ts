import { heldOn, type BoardLayouts } from '../../../../layout';
import {
	judgeByHand,
	type HandSpot,
	type Judgement,
	type Piece,
	type Placed,
} from '../../../../nest';
import type { Plan } from '../../../../plan';

/** A laid-out sheet of a plan. */
export interface SheetOf {
	readonly plan: Plan;
	readonly boards: BoardLayouts;
	readonly index: number;
}

/** Which sheet is worked at; asked anew after each plan. */
type Asked = () => SheetOf;

/** How sheets are asked for that hold still: printed, cut, or in a plan that failed its audit. */
const isStill = ({ boards, index }: SheetOf): boolean =>
	boards.sources[index]?.pinned === true || boards.faults.length > 0;

/**
 * A piece in hand on a sheet: where it lies, where it is moved to, and what the auditor says of
 * that. Nothing of the job is changed before it is kept.
 */
export class HandWork {
	readonly #asked: Asked;
	/** Where the chosen piece lies in the plan. */
	#lies = $state.raw<HandSpot | null>(null);
	/** Where it is in hand; null while it lies where the plan has it. */
	#spot = $state.raw<HandSpot | null>(null);

	constructor(asked: Asked) {
		this.#asked = asked;
	}

	readonly sheet: SheetOf = $derived.by(() => this.#asked());
	readonly isOpen: boolean = $derived.by(() => !isStill(this.sheet));
	readonly placed: readonly Placed[] = $derived.by(
		() => this.sheet.boards.answer.layouts[this.sheet.index]?.placed ?? [],
	);
	readonly held: readonly boolean[] = $derived.by(() => {
		const { plan, boards, index } = this.sheet;
		return this.isOpen ? heldOn(plan.job, boards, index) : [];
	});
	/** Among the pieces of the sheet; -1 for none. */
	readonly chosen: number = $derived.by(() => {
		const at = this.#lies;
		return at === null ? -1 : this.placed.findIndex((p) => isAt(p, at));
	});
	readonly piece: Piece | null = $derived.by(() => {
		const { id } = this.placed[this.chosen] ?? {};
		return this.sheet.boards.problem.pieces.find((p) => p.id === id) ?? null;
	});
	/** Where the chosen piece is now. */
	readonly spot: HandSpot | null = $derived.by(
		() => this.#spot ?? (this.chosen < 0 ? null : (this.placed[this.chosen] ?? null)),
	);
	readonly isMoved: boolean = $derived.by(() => {
		const at = this.placed[this.chosen];
		return at !== undefined && this.spot !== null && !isAt(at, this.spot);
	});
	/** All pieces of the sheet as they lie now. */
	readonly #all: readonly HandSpot[] = $derived.by(() =>
		this.placed.map((p, i) => (i === this.chosen && this.spot ? this.spot : p)),
	);
	/** What lies by hand once the chosen piece does. */
	readonly #mine: readonly HandSpot[] = $derived.by(() =>
		this.#all.filter((_, i) => i === this.chosen || this.held[i]),
	);
	/** The whole sheet as it lies now. */
	readonly whole: Judgement = $derived.by(() => this.#judged(this.#all));
	/** Only what lies by hand, the rest laid anew round it. */
	readonly alone: Judgement = $derived.by(() => this.#judged(this.#mine));

	#judged(spots: readonly HandSpot[]): Judgement {
		const { boards, index } = this.sheet;
		const id = boards.answer.layouts[index]?.sheet;
		const sheet = boards.problem.sheets.find((s) => s.id === id);
		if (!sheet || this.chosen < 0 || !this.isOpen) return { faults: [], sheet: null };
		return judgeByHand(boards.problem, sheet, spots);
	}

	choose(i: number): void {
		const at = this.placed[i];
		if (i === this.chosen) return;
		this.#lies = at ? spotOf(at) : null;
		this.#spot = null;
	}

	/** The chosen piece somewhere else on the sheet. */
	move(to: Partial<HandSpot>): void {
		if (this.spot && this.isOpen) this.#spot = { ...spotOf(this.spot), ...to };
	}

	/** A quarter turn to the left, or half a turn where the grain allows no other. */
	turn(): void {
		const { piece, spot } = this;
		if (!piece || !spot || piece.turns === 'none') return;
		const by = piece.turns === 'half' ? 180 : 90;
		this.move({ turn: ((spot.turn + by) % 360) as HandSpot['turn'] });
	}

	/** Back where it lies; false where it is there already. */
	takeBack(): boolean {
		const was = this.isMoved;
		this.#spot = null;
		return was;
	}

	drop(): void {
		this.#lies = this.#spot = null;
	}

	/**
	 * What is to lie by hand: the chosen piece with those that do, or everything on the sheet. The
	 * piece stays chosen where it comes to lie.
	 */
	kept(what: 'piece' | 'sheet'): readonly HandSpot[] {
		const spots = what === 'piece' ? this.#mine : this.#all;
		this.#lies = this.spot && spotOf(this.spot);
		return spots.map(spotOf);
	}

	/** What lies by hand without the chosen piece. */
	withoutChosen(): readonly HandSpot[] {
		return this.placed.filter((_, i) => i !== this.chosen && this.held[i]).map(spotOf);
	}
}

const isAt = (p: HandSpot, at: HandSpot): boolean =>
	p.id === at.id && p.x === at.x && p.y === at.y && p.turn === at.turn;

const spotOf = ({ id, x, y, turn }: HandSpot): HandSpot => ({ id, x, y, turn });
