import type { HandPlace, Job } from '../../job';
import { nth } from '../../measure';
import {
	freeStock,
	withLaid,
	numberedAnew,
	type HandSpot,
	judgeByHand,
	type HandProblem,
	type HandSheet,
	type Sheet,
	type SheetLayout,
	type SheetsAnswer,
} from '../../nest';
import type { HandRefusal } from '../layouts';

/*
 * Parts laid by hand lie where they were laid, and the rest is planned round them: what they leave
 * free is stock, taken first. A place that no longer holds is said and left out; its part is laid
 * out with the rest.
 */

/** A sheet with parts laid by hand, and the number they go by in the job. */
interface Held {
	readonly on: number;
	readonly sheet: Sheet;
	readonly hand: HandSheet;
}

export interface HandLaid {
	readonly held: readonly Held[];
	readonly refused: readonly HandRefusal[];
}

interface Place {
	readonly at: HandPlace;
	/** In the job. */
	readonly index: number;
}

/** The places of one material as sheets, each place judged after those before it. */
export function handLaid(job: Job, material: string, problem: HandProblem): HandLaid {
	const places = job.byHand.map((at, index) => ({ at, index }));
	const groups = new Map<string, Place[]>();
	for (const place of places) {
		const { material: of, sheet, on } = place.at;
		const key = JSON.stringify([sheet, on]);
		if (of === material) groups.set(key, [...(groups.get(key) ?? []), place]);
	}
	const left = new Left(problem);
	const held: Held[] = [];
	const refused: HandRefusal[] = [];
	for (const group of groups.values()) {
		const { at } = nth(group, 0);
		const sheet = left.takeSheet(at.sheet);
		if (sheet) {
			const { hand, out } = laidOn(problem, sheet, group, left);
			refused.push(...out);
			if (hand) held.push({ on: at.on, sheet, hand });
			else left.giveBack(at.sheet);
		} else
			refused.push(
				...group.map(({ index }) => ({ place: index, what: 'Its sheet is not on the rack now.' })),
			);
	}
	return { held, refused: refused.sort((a, b) => a.place - b.place) };
}

/** What is left of parts and sheets while places are taken up. */
class Left {
	readonly #parts: Map<string, number>;
	readonly #used = new Map<string, number>();

	constructor(private readonly problem: HandProblem) {
		this.#parts = new Map(problem.pieces.map((p) => [p.id, p.count]));
	}

	takeSheet(id: string): Sheet | null {
		const sheet = this.problem.sheets.find((s) => s.id === id);
		const used = this.#used.get(id) ?? 0;
		if (!sheet || (sheet.count !== null && used >= sheet.count)) return null;
		this.#used.set(id, used + 1);
		return sheet;
	}

	giveBack(sheet: string): void {
		this.#used.set(sheet, (this.#used.get(sheet) ?? 1) - 1);
	}

	has = (part: string): boolean => (this.#parts.get(part) ?? 0) > 0;

	takePart(part: string): void {
		this.#parts.set(part, (this.#parts.get(part) ?? 0) - 1);
	}
}

function laidOn(problem: HandProblem, sheet: Sheet, group: readonly Place[], left: Left) {
	const spots: HandSpot[] = [];
	const out: HandRefusal[] = [];
	let hand: HandSheet | null = null;
	const refuse = (place: number, what: string) => void out.push({ place, what });
	// In the order of the job: of two that clash the one that was laid first stays.
	for (const { at, index } of group) {
		const spot: HandSpot = { id: at.part, x: at.x, y: at.y, turn: at.turn };
		if (!left.has(at.part)) {
			refuse(index, 'No such part is left to lay: there are fewer of it, or none.');
			continue;
		}
		const { faults, sheet: made } = judgeByHand(problem, sheet, [...spots, spot]);
		const [fault] = faults;
		if (fault) refuse(index, fault.what);
		if (!made) continue;
		hand = made;
		spots.push(spot);
		left.takePart(at.part);
	}
	return { hand, out };
}

const FREE = 'free';

/** The problem that is left: parts laid and their sheets are off it, free places are stock. */
export function roundHeld<P extends HandProblem>(
	problem: P,
	{ held }: HandLaid,
	withFree: boolean,
): P {
	if (held.length === 0) return problem;
	const laid = held.flatMap((h) => h.hand.layout.placed);
	const free = held.flatMap((h, n) => freeStock(h.hand, (i) => `${FREE}/${n}/${i}`));
	return {
		...problem,
		pieces: problem.pieces
			.map((p) => ({ ...p, count: p.count - laid.filter((l) => l.id === p.id).length }))
			.filter((p) => p.count > 0),
		sheets: [
			...(withFree ? free : []),
			...problem.sheets
				.map((s) => lessUsed(s, held.filter((h) => h.sheet.id === s.id).length))
				.filter((s) => s.count !== 0),
		],
	};
}

const lessUsed = (sheet: Sheet, used: number): Sheet =>
	sheet.count === null ? sheet : { ...sheet, count: sheet.count - used };

/** The answer of the rest put beside and upon the sheets laid by hand, which come first. */
export function withHeld(found: SheetsAnswer, { held }: HandLaid): SheetsAnswer {
	if (held.length === 0) return found;
	const upon = held.map(() => new Map<number, SheetLayout>());
	const beside: SheetLayout[] = [];
	for (const layout of found.layouts) {
		const [kind, sheet, place] = layout.sheet.split('/');
		if (kind === FREE) nth(upon, Number(sheet)).set(Number(place), layout);
		else beside.push(layout);
	}
	const sheets = held.map((h, n) => withLaid(h.hand, nth(upon, n)));
	return {
		...found,
		layouts: numberedAnew([...sheets, ...beside]),
		cost: found.cost + held.reduce((sum, h) => sum + h.sheet.price, 0),
		// What is known of the rest says nothing of a plan with nothing laid by hand.
		bound: { sheets: 0, cost: 0 },
		proven: false,
	};
}
