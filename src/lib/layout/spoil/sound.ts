import type { Part } from '../../design';
import type { Job, PinnedLayout } from '../../job';
import type { Blank } from '../../wrap';
import { changedSince, layBoards } from '../boards';
import type { BoardLayouts, ClothLayouts } from '../layouts';
import { layCloths } from '../rolls';
import type { SearchSession } from '../search-session';

/** What is laid out of a job. */
interface Laid {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
}

/**
 * The layouts of a job as if nothing of it had been spoiled, for what spoil costs is the difference
 * to them; null where nothing was spoiled. Boards and cloths nothing of which was are those given.
 */
export async function laySound(
	job: Job,
	made: { readonly parts: readonly Part[]; readonly blanks: readonly Blank[] } & Laid,
	search: SearchSession,
): Promise<Laid | null> {
	const boards = new Set(job.pinned.filter(hasSpoiled).map((p) => p.material));
	const cloths = new Set(
		job.pulled.filter((p) => p.placed.some((at) => at.spoiled)).map((p) => p.cloth),
	);
	if (boards.size + cloths.size === 0) return null;
	const sound = withoutSpoil(job, made);
	const laid = await layBoards(
		sound,
		made.parts.filter((p) => boards.has(p.material)),
		search,
	);
	const blanks = made.blanks.filter((b) => cloths.has(b.cloth));
	const pulled = cloths.size > 0 ? await layCloths(sound, blanks, search) : [];
	return {
		boards: made.boards.map((b) => laid.find((l) => l.material === b.material) ?? b),
		cloths: made.cloths.map((c) =>
			cloths.has(c.cloth) ? (pulled.find((l) => l.cloth === c.cloth) ?? c) : c,
		),
	};
}

const hasSpoiled = ({ placed }: PinnedLayout): boolean => placed.some((p) => p.spoiled);

/** Without the marks, nor the sheets and cloth that are there for what was spoiled alone. */
function withoutSpoil(
	job: Job,
	{ parts, blanks }: { readonly parts: readonly Part[]; readonly blanks: readonly Blank[] },
): Job {
	const sheets = job.pinned.map((from) => ({
		from,
		pieces: from.placed.map((at) => ({
			id: at.id,
			spoiled: at.spoiled,
			fits: changedSince(find(parts, at.id), from, at)?.length === 0,
		})),
	}));
	const pulls = job.pulled.map((from) => ({
		from,
		pieces: from.placed.map(({ id, spoiled }) => ({ id, spoiled, fits: true })),
	}));
	return {
		...job,
		pinned: withoutAgain(sheets, parts).map((p) => ({ ...p, placed: p.placed.map(asSound) })),
		pulled: withoutAgain(pulls, blanks).map((p) => ({ ...p, placed: p.placed.map(asSound) })),
	};
}

const find = (parts: readonly Part[], id: string): Part | undefined =>
	parts.find((p) => p.id === id);

/** A sheet or a length of cloth, and what lies on it. */
interface Made<F> {
	readonly from: F;
	readonly pieces: readonly {
		readonly id: string;
		readonly spoiled: boolean;
		/** Is it as the design has it now? */
		readonly fits: boolean;
	}[];
}

/**
 * Without what was made because pieces were spoiled, no more of each than were. What was made last
 * goes first, but for what the design needs as it is now: that was cut again because the design
 * was changed.
 */
function withoutAgain<F>(
	all: readonly Made<F>[],
	needed: readonly { readonly id: string; readonly count: number }[],
): F[] {
	const pieces = all.flatMap((m) => m.pieces);
	const spoiled = counted(pieces.filter((p) => p.spoiled));
	const laid = counted(pieces);
	const fitting = counted(pieces.filter((p) => p.fits));
	const need = new Map(needed.map((p) => [p.id, p.count]));
	/** More than the design needs of a piece, and no fewer once these are gone. */
	const isOver = (laid: ReadonlyMap<string, number>, id: string, gone: number): boolean =>
		gone === 0 || many(laid, id) - gone >= many(need, id);
	const isFor = (m: Made<F>): boolean => {
		const [mine, fits] = [counted(m.pieces), counted(m.pieces.filter((p) => p.fits))];
		const isAgain = [...mine].every(
			([id, n]) =>
				n <= many(spoiled, id) && isOver(laid, id, n) && isOver(fitting, id, many(fits, id)),
		);
		if (!isAgain) return false;
		const less = [
			[spoiled, mine],
			[laid, mine],
			[fitting, fits],
		] as const;
		for (const [counts, gone] of less)
			for (const [id, n] of gone) counts.set(id, many(counts, id) - n);
		return true;
	};
	const without = all.toReversed().filter((m) => !isFor(m));
	return without.reverse().map((m) => m.from);
}

const many = (counts: ReadonlyMap<string, number>, id: string): number => counts.get(id) ?? 0;

function counted(pieces: readonly { readonly id: string }[]): Map<string, number> {
	const counts = new Map<string, number>();
	for (const { id } of pieces) counts.set(id, many(counts, id) + 1);
	return counts;
}

const asSound = <P extends { readonly spoiled: boolean }>(placed: P): P => ({
	...placed,
	spoiled: false,
});
