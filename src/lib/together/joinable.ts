import { foamMinutes, type Job, type Problem, sawOf } from '../job';
import { type Length, printMoney, type Ruler, showLength, ticks } from '../measure';

/** Of all that jobs have, what must be the same for one saw, one ruler and one sum to serve all. */
interface Must {
	/** Where it stands in the job. */
	readonly at: string;
	/** In words: 'the kerf'. */
	readonly what: string;
	readonly of: (job: Job) => unknown;
	/** As it is told; as it stands otherwise. */
	readonly told?: (job: Job) => string;
}

const length = (of: (job: Job) => number) => (job: Job) =>
	showLength(ticks(of(job)), job.shop.ruler);
const bySaw = (job: Job): boolean => job.shop.method === 'saw';

const limit = (most: Length | null, ruler: Ruler): string =>
	most === null ? 'no limit' : showLength(most, ruler);

/** One thing of the saw, compared as it is told; the mark it goes by in its job is none. */
function sawMust(
	what: string,
	tell: (saw: ReturnType<typeof sawOf>, ruler: Ruler) => string,
): Must {
	const told = (job: Job): string => tell(sawOf(job), job.shop.ruler);
	return { at: 'saws', what, told, of: (job) => bySaw(job) && told(job) };
}

const RULERS: readonly Must[] = [
	{ at: 'ruler.unit', what: 'the ruler', of: ({ shop }) => shop.ruler.unit },
	{
		...{ at: 'ruler.fraction', what: 'the fractions of the ruler' },
		of: ({ shop }) => (shop.ruler.unit === 'in' ? shop.ruler.fraction : 0),
	},
	{ at: 'ruler.decimal', what: 'the decimal sign', of: ({ shop }) => shop.ruler.decimal },
	{ at: 'currency', what: 'the currency', of: ({ shop }) => shop.currency },
];

const CUTTING: readonly Must[] = [
	{ at: 'method', what: 'the way sheets are cut', of: ({ shop }) => shop.method },
	{
		...{ at: 'saws', what: 'the kerf', of: (job) => bySaw(job) && sawOf(job).kerf },
		told: length((job) => sawOf(job).kerf),
	},
	{
		...{ at: 'saws', what: 'the trim cut', of: (job) => bySaw(job) && sawOf(job).trim },
		told: length((job) => sawOf(job).trim),
	},
	sawMust('the saw', ({ name }) => name),
	sawMust('the tilt limit of the saw', ({ tiltLimit }) => `${tiltLimit}°`),
	sawMust('the fence limit of the saw', ({ fenceLimit }, ruler) => limit(fenceLimit, ruler)),
	sawMust('its narrowest safe rip', ({ narrowestRip }, ruler) => limit(narrowestRip, ruler)),
	sawMust('its most stages', ({ stages }) => String(stages ?? 'no limit')),
	sawMust('its first cuts', ({ first }) => first),
	sawMust('its packet', ({ packet }, ruler) =>
		packet === null ? 'one at a time' : limit(packet, ruler),
	),
	{
		...{
			at: 'router.bit',
			what: 'the router bit',
			of: (job) => !bySaw(job) && job.shop.router.bit,
		},
		told: length(({ shop }) => shop.router.bit),
	},
	{
		...{ at: 'router.useHoles', what: 'the use of holes' },
		of: (job) => !bySaw(job) && job.shop.router.useHoles,
	},
	{
		...{ at: 'keep', what: 'the smallest offcut worth racking', of: ({ shop }) => shop.keep },
		told: ({ shop }) =>
			`${showLength(shop.keep.length, shop.ruler)} x ${showLength(shop.keep.width, shop.ruler)}`,
	},
];

const COUNTING: readonly Must[] = [
	{ at: 'spare', what: 'the spare on sundries', of: ({ shop }) => shop.spare },
	{
		...{ at: 'labour.hour', what: 'the price of an hour', of: ({ shop }) => shop.labour.hour },
		told: ({ shop }) => printMoney(shop.labour.hour, shop.currency, shop.ruler.decimal),
	},
	{
		...{ at: 'labour.minutes', what: 'the minutes for each kind of work' },
		...{ of: ({ shop }) => minutesOf(shop), told: ({ shop }) => minutesText(shop) },
	},
	{
		...{ at: 'adhesive', what: 'the adhesive', of: ({ shop }) => shop.adhesive },
		told: ({ shop }) => `${shop.adhesive.way}, open ${shop.adhesive.open ?? 'as usual'}`,
	},
];

/** Foam that goes by the minutes of cloth is of those minutes, whether a shop says so or not. */
const minutesOf = (shop: Job['shop']) => ({
	...shop.labour.minutes,
	foamSquareMetre: foamMinutes({ shop }),
});

const minutesText = (shop: Job['shop']): string =>
	Object.entries(minutesOf(shop))
		.map(([what, minutes]) => `${what} ${minutes}`)
		.join(', ');

/**
 * Why jobs cannot be planned in one go, each with what differs from the first of them; none where
 * they can. Paths begin with the tag of the job.
 */
export function notJoinable(jobs: readonly Job[], tags: readonly string[]): Problem[] {
	const [first, ...others] = jobs;
	if (first === undefined) return [];
	return others.flatMap((job, i) =>
		[...RULERS, ...CUTTING, ...COUNTING].flatMap((must): Problem[] => {
			if (JSON.stringify(must.of(job)) === JSON.stringify(must.of(first))) return [];
			const told = must.told ?? ((of: Job) => String(must.of(of)));
			const tag = tags[i + 1] ?? '';
			return [
				{
					path: [tag, 'shop', ...must.at.split('.')],
					what: `Job ${tag} differs from job ${tags[0]} in ${must.what}: ${told(job)}, not ${told(first)}.`,
					fix: 'Set the same in both, or plan this job by itself.',
					kind: 'stop',
				},
			];
		}),
	);
}
