import { type BoxPlan, LOOSE, type PanelPlan, type Part } from '../design';
import { foamMinutes, type Job, priceOfLength, rollsOf } from '../job';
import { inMetres, type ReelPlan } from '../runs';
import type { Blank } from '../wrap';
import { perArea } from './material';
import type { Item } from './quote';

/** What was designed and wrapped: the things a customer pays for. */
export interface Built {
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	/** What runs are cut from. */
	readonly reels: readonly ReelPlan[];
}

/**
 * What the customer gets, one line a box, panel, list of parts or kind of typed work. Each is
 * weighed by the worth of its boards and cloth and by the time it takes, so that the price is
 * shared out as the cost arises.
 */
export function items(job: Job, built: Built): Item[] {
	const minute = job.shop.labour.hour / 60;
	const { minutes } = job.shop.labour;
	const boxes = built.boxes.map((b) => {
		const count = job.boxes.find((asked) => asked.id === b.id)?.count ?? 1;
		return {
			what: count > 1 ? `${b.name} (${count})` : b.name,
			weight: material(job, built, b.id) + count * minutes.box * minute,
		};
	});
	const panels = built.panels.map((p) => ({
		what: p.name,
		weight: material(job, built, p.id) + minutes.panel * minute,
	}));
	const loose = built.parts.some((p) => p.owner === LOOSE)
		? [{ what: 'Parts cut to the list', weight: material(job, built, LOOSE) }]
		: [];
	const runs =
		built.reels.length > 0
			? [{ what: 'Cables, looms and hoses', weight: worthOfRuns(job, built.reels) }]
			: [];
	const typed = job.work
		.filter((w) => w.hours > 0)
		.map((w) => ({ what: w.what, weight: w.hours * (w.hour ?? job.shop.labour.hour) }));
	return [...boxes, ...panels, ...loose, ...runs, ...typed];
}

/**
 * Boards and cloth of one owner, and the minutes for marking parts and bonding foam and cloth,
 * in hundredths.
 */
function material(job: Job, built: Built, owner: string): number {
	const { minutes, hour } = job.shop.labour;
	const parts = built.parts.filter((p) => p.owner === owner);
	const boards = parts.reduce(
		(sum, p) =>
			sum + p.count * (p.length * p.width * perArea(job, p.material) + (minutes.part * hour) / 60),
		0,
	);
	const cloth = built.blanks
		.filter((b) => b.owner === owner)
		.reduce((sum, b) => sum + b.count * (worthOfBlank(job, b) + bonding(job, b)), 0);
	return boards + cloth;
}

function worthOfBlank(job: Job, blank: Blank): number {
	const roll = rollsOf(job, blank.cloth)[0];
	if (!roll) return 0;
	return priceOfLength(roll, (blank.length * blank.width) / roll.usable, job.shop.ruler);
}

function bonding(job: Job, blank: Blank): number {
	const { minutes, hour } = job.shop.labour;
	const foam = (blank.foam ?? 0) * foamMinutes(job);
	return ((blank.bonded * minutes.bondedSquareMetre + foam) / 1e6) * (hour / 60);
}

/** Of the lengths in them at the list price, and of the work to cut them. */
function worthOfRuns(job: Job, reels: readonly ReelPlan[]): number {
	const { minutes, hour } = job.shop.labour;
	const cut = reels.flatMap((r) => r.lengths).reduce((sum, { runs }) => sum + runs.length, 0);
	return reels.reduce(
		(sum, { reel, need }) => {
			const sundry = job.stock.sundries.find((s) => s.id === reel);
			return sum + (sundry ? (sundry.price * inMetres(need)) / sundry.pack : 0);
		},
		(cut * minutes.run * hour) / 60,
	);
}
