import type { Part } from '../design';
import { type JoinedBoards, type JoinedCloth, pullIn, sheetsIn, type LaidWay } from '../estimate';
import type { Job, Problem } from '../job';
import {
	type BoardLayouts,
	type ClothLayouts,
	complaints,
	layBoards,
	layCloths,
	type SearchSession,
} from '../layout';
import { nth, ticks } from '../measure';
import type { Blank } from '../wrap';
import type { AtHand } from './at-hand';
import { boardsTogetherPay, clothTogetherPays, sideBySide } from './choose';
import type { Alike } from './groups';
import { taggedBoards, taggedCloth } from './tagged';

interface Asked {
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	readonly search: SearchSession;
}

interface Laid {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly joinedBoards: readonly JoinedBoards[];
	readonly joinedCloths: readonly JoinedCloth[];
	readonly problems: readonly Problem[];
}

/** Lays out the parts and blanks of all jobs, each board and cloth in the way that costs less. */
export async function layForAll(job: Job, at: AtHand, asked: Asked): Promise<Laid> {
	const shared = (groups: readonly Alike[]): ReadonlySet<string> =>
		new Set(groups.filter((g) => g.jobs.length > 1).map((g) => g.id));
	const [boardsAsked, clothsAsked] = [shared(at.rack.boards), shared(at.rack.cloths)];
	const parts = asked.parts.filter((p) => boardsAsked.has(p.material));
	const blanks = asked.blanks.filter((b) => clothsAsked.has(b.cloth));
	const allBoards = await layBoards(job, parts, asked.search);
	const allCloths = await layCloths(job, blanks, asked.search);
	const boards = at.rack.boards.flatMap((g) => boardsOf(job, at, g, allBoards));
	const cloths = at.rack.cloths.flatMap((g) => clothOf(job, at, g, allCloths));
	const laid = { boards: boards.map((b) => b.laid), cloths: cloths.map((c) => c.laid) };
	return {
		...laid,
		joinedBoards: boards.map((b) => b.joined),
		joinedCloths: cloths.map((c) => c.joined),
		problems: [...refusedOf(job, laid), ...said([...boards, ...cloths])],
	};
}

const markedBy = (at: AtHand, j: number) => ({
	tag: nth(at.tags, j),
	marks: nth(at.rack.marks, j),
});

function boardsOf(
	job: Job,
	at: AtHand,
	group: Alike,
	all: readonly BoardLayouts[],
): { readonly laid: BoardLayouts; readonly joined: JoinedBoards }[] {
	const each = group.jobs.flatMap((j) =>
		nth(at.plans, j)
			.boards.filter((b) => b.material === group.own)
			.map((b) => taggedBoards(b, markedBy(at, j))),
	);
	const alone = each[0];
	if (!alone) return [];
	const whole = all.find((b) => b.material === group.id);
	const apart = whole ? sideBySide(whole, each) : alone;
	const pays = whole !== undefined && boardsTogetherPay(job, whole, apart);
	const laid = pays ? whole : apart;
	return [
		{
			laid,
			joined: {
				...inWhichWay(at, group, whole !== undefined, pays),
				...{ sheets: sheetsIn(laid), apart: sheetsIn(apart) },
			},
		},
	];
}

function clothOf(
	job: Job,
	at: AtHand,
	group: Alike,
	all: readonly ClothLayouts[],
): { readonly laid: ClothLayouts; readonly joined: JoinedCloth }[] {
	const each = group.jobs.flatMap((j) =>
		nth(at.plans, j)
			.cloths.filter((c) => c.cloth === group.own)
			.map((c) => taggedCloth(c, markedBy(at, j))),
	);
	if (each.length === 0) return [];
	const apart: ClothLayouts = {
		cloth: group.id,
		rolls: each.flatMap((c) => c.rolls),
		unplaced: each.flatMap((c) => c.unplaced),
	};
	const whole = all.find((c) => c.cloth === group.id);
	const pays = whole !== undefined && clothTogetherPays(job, whole, apart);
	const laid = pays ? whole : apart;
	return [
		{
			laid,
			joined: {
				...inWhichWay(at, group, whole !== undefined, pays),
				...{ pull: ticks(pullIn(laid)), apart: ticks(pullIn(apart)) },
			},
		},
	];
}

function inWhichWay(at: AtHand, group: Alike, shared: boolean, pays: boolean) {
	const way: LaidWay = !shared ? 'alone' : pays ? 'together' : 'apart';
	return { id: group.id, name: group.name, jobs: group.jobs.map((j) => nth(at.tags, j)), way };
}

/** What lies on no sheet was said of its job; a layout that failed its check is said here. */
function refusedOf(job: Job, laid: Pick<Laid, 'boards' | 'cloths'>): Problem[] {
	const boards = laid.boards.map((b) => ({ ...b, answer: { ...b.answer, unplaced: [] } }));
	const cloths = laid.cloths.map((c) => ({ ...c, unplaced: [] }));
	const nowhere = { of: () => [] };
	return complaints(
		{ ...job, pinned: [], pulled: [] },
		nowhere,
		{ parts: [], blanks: [], boards, cloths },
		[],
	);
}

function said(all: readonly { readonly joined: JoinedBoards | JoinedCloth }[]): Problem[] {
	return all
		.filter(({ joined }) => joined.way === 'apart')
		.map(({ joined }): Problem => ({
			path: ['stock', joined.id],
			what: `${joined.name}: one layout for ${joined.jobs.join(', ')} came out no cheaper, so each job keeps its own.`,
			fix: 'Nothing to do; a longer look may find a better one.',
			kind: 'note',
		}));
}
