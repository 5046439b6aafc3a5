import type { Job, PulledCloth } from '../../job';
import { ticks } from '../../measure';
import type { AuditFault, Placed, RollPiece, RollProblem } from '../../nest';
import type { Blank } from '../../wrap';
import type { RollLayout } from '../layouts';

/*
 * Cloth that was pulled stays as it is: its blanks are taken off the demand, and only the rest is
 * laid out and ordered.
 */

/** The blanks that are not on cloth already pulled, and those that were spoiled there. */
export function notPulled({ pulled }: Job, blanks: readonly Blank[]): Blank[] {
	const made = new Map<string, number>();
	for (const { id } of pulled.flatMap(({ placed }) => placed.filter((p) => !p.spoiled)))
		made.set(id, (made.get(id) ?? 0) + 1);
	return blanks
		.map((b) => ({ ...b, count: Math.max(0, b.count - (made.get(b.id) ?? 0)) }))
		.filter((b) => b.count > 0);
}

/** The layouts of one cloth that were pulled, as they were. */
export function pulledLayouts({ pulled }: Job, cloth: string): RollLayout[] {
	const next = new Map<string, number>();
	const copy = (id: string): number => {
		const n = next.get(id) ?? 0;
		next.set(id, n + 1);
		return n;
	};
	return pulled
		.filter((p) => p.cloth === cloth)
		.map((p) =>
			layoutOf(
				p,
				p.placed.map(({ spoiled: _, ...placed }) => ({ ...placed, copy: copy(placed.id) })),
			),
		);
}

/** New layouts number their copies after those that were pulled. */
export function renumbered(layout: RollLayout, pulled: readonly RollLayout[]): RollLayout {
	const made = pulled.flatMap(({ answer }) => answer.placed);
	if (made.length === 0) return layout;
	const before = (id: string): number => made.filter((p) => p.id === id).length;
	const placed = layout.answer.placed.map((p) => ({ ...p, copy: p.copy + before(p.id) }));
	return { ...layout, answer: { ...layout.answer, placed } };
}

/**
 * Blanks may have been nested by their outlines, which are not kept: only that each lies on the
 * cloth is checked again.
 */
function layoutOf(p: PulledCloth, placed: readonly Placed[]): RollLayout {
	const problem: RollProblem = {
		width: p.usable,
		gap: ticks(0),
		pieces: [...new Set(p.placed.map(({ id }) => id))].map((id) => pieceOf(id, p)),
		limit: null,
		repeat: ticks(0),
		by: 'outline',
	};
	const answer = {
		...{ length: p.length, placed, unplaced: [], bound: p.length },
		...{ proven: false, effort: 0 },
	};
	return {
		...{ roll: p.roll, problem, answer, pull: p.pull, napless: p.length },
		...(p.along ? { along: p.along } : {}),
		...{ owned: p.owned, pulled: { lot: p.lot, spoiled: spoiledIn(p) } },
		faults: faultsOf(p),
	};
}

const spoiledIn = ({ placed }: PulledCloth): number[] =>
	placed.flatMap((p, i) => (p.spoiled ? [i] : []));

function faultsOf({ placed, length, usable }: PulledCloth): AuditFault[] {
	return placed
		.filter((at) => at.x + at.length > length || at.y + at.width > usable)
		.map((at) => ({ where: at.id, what: 'lies off the cloth that was pulled' }));
}

function pieceOf(id: string, { placed }: PulledCloth): RollPiece {
	const mine = placed.filter((p) => p.id === id);
	const [first] = mine;
	const isTurned = first?.turn === 90 || first?.turn === 270;
	const [length, width] = isTurned
		? [first.width, first.length]
		: [first?.length ?? ticks(1), first?.width ?? ticks(1)];
	return { id, length, width, count: mine.length, turns: [0, 90, 180, 270] };
}
