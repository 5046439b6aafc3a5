import type { Part } from '../../design';
import type { Job, PinnedLayout } from '../../job';
import type { Blank } from '../../wrap';
import { layBoards } from '../boards';
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
	const sound = withoutSpoil(job, made.parts);
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

const hasSpoiled = ({ cut, placed }: PinnedLayout): boolean => cut && placed.some((p) => p.spoiled);

/** Without the marks, and without the printed sheets that are there for what was spoiled alone. */
function withoutSpoil(job: Job, parts: readonly Part[]): Job {
	const spoiled = new Set(
		job.pinned
			.filter(hasSpoiled)
			.flatMap((p) => p.placed.flatMap((at) => (at.spoiled ? at.id : []))),
	);
	const laid = new Map<string, number>();
	const count = (p: PinnedLayout, by: number): void => {
		for (const { id } of p.placed) laid.set(id, (laid.get(id) ?? 0) + by);
	};
	for (const p of job.pinned) count(p, 1);
	const needed = new Map(parts.map((p) => [p.id, p.count]));
	const isFor = (p: PinnedLayout): boolean => {
		if (p.cut || !p.placed.every(({ id }) => spoiled.has(id))) return false;
		count(p, -1);
		if (p.placed.every(({ id }) => (laid.get(id) ?? 0) >= (needed.get(id) ?? 0))) return true;
		count(p, 1);
		return false;
	};
	const without = job.pinned.toReversed().filter((p) => !isFor(p));
	return {
		...job,
		pinned: without.reverse().map((p) => ({ ...p, placed: p.placed.map(asSound) })),
		pulled: job.pulled.map((p) => ({ ...p, placed: p.placed.map(asSound) })),
	};
}

const asSound = <P extends { readonly spoiled: boolean }>(placed: P): P => ({
	...placed,
	spoiled: false,
});
