import { type Need, UNIT } from '../../design';
import { type Job, packsDone, reelOf, type Sundry } from '../../job';
import { leftToCut, type RunPlan } from '../../runs';

/** What one pack holds; what is of no kind is counted in packs: nobody knows in what else. */
export const contentOf = ({ kind, pack }: Pick<Sundry, 'kind' | 'pack'>): number =>
	UNIT[kind] === 'packs' ? 1 : pack;

/** What is still to be taken of a sundry, in the unit it is counted in. */
interface LeftOf {
	/** Of what the plan counts, overlap in it, spare not. */
	readonly laid: number;
	/** Of the packs typed for the job. */
	readonly typed: number;
}

/** What is booked as used was for what the plan counts, then for what is typed. */
export function sundryLeft(used: Job['used'], sundry: Sundry, counted: number): LeftOf {
	const pack = contentOf(sundry);
	const done = packsDone(used, sundry.id) * pack;
	const all = counted * (1 + sundry.overlap / 100);
	return {
		laid: Math.max(0, all - done),
		typed: Math.max(0, sundry.use * pack - Math.max(0, done - all)),
	};
}

/** Of packs typed for a job beside its runs, those that are not used: of a reel they go first. */
export const typedPacksLeft = (used: Job['used'], { id, use }: Sundry): number =>
	Math.max(0, use - packsDone(used, id));

/** What of a plan is taken from sundries. */
interface Taking {
	readonly job: Job;
	readonly needs: readonly Need[];
	readonly runs: readonly RunPlan[];
}

/**
 * A job whose sundries are partly used as one that never took those: its needs are what is left of
 * them, its typed packs likewise, and nothing is booked. The order of that is the order of what is
 * left.
 *
 * @param servedBy mark of the sundry a need is taken from; '' for none
 */
export function withoutUsed(
	{ job, needs, runs }: Taking,
	servedBy: (need: Need) => string,
): { readonly needs: Need[]; readonly uses: ReadonlyMap<string, number> } {
	const { sundries } = job.stock;
	const shares = new Map<string, number>();
	const uses = new Map<string, number>();
	for (const sundry of sundries) {
		const mine = needs.filter((n) => servedBy(n) === sundry.id);
		const counted = mine.reduce((sum, n) => sum + n.amount, 0);
		const isReel = runs.some((r) => r.reel === sundry.id) && reelOf(job, sundry.id) !== null;
		const { laid, typed } = sundryLeft(job.used, sundry, counted);
		const all = counted * (1 + sundry.overlap / 100);
		shares.set(sundry.id, isReel ? shareToCut(job, runs, sundry.id) : all > 0 ? laid / all : 0);
		uses.set(sundry.id, isReel ? typedPacksLeft(job.used, sundry) : typed / contentOf(sundry));
	}
	return {
		needs: needs.map((n) => ({ ...n, amount: n.amount * (shares.get(servedBy(n)) ?? 1) })),
		uses,
	};
}

/** Of the length of all runs cut from a reel, the share that is not cut yet. */
function shareToCut(job: Job, runs: readonly RunPlan[], reel: string): number {
	const lengthIn = (of: readonly RunPlan[]): number =>
		of.reduce((sum, r) => sum + (r.reel === reel && r.uncut === '' ? r.cut * r.count : 0), 0);
	const all = lengthIn(runs);
	return all > 0 ? lengthIn(leftToCut(job, runs)) / all : 0;
}
