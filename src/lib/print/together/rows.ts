import type { JobShare, Tally, LaidWay } from '../../estimate';
import { money, plainMoney, printMoney, type Ruler, toMm } from '../../measure';
import type { Plan } from '../../plan';
import { amountText, figuresOn } from '../wording';

/* What is told of jobs planned together, the same on paper and on screen; nothing for one job. */

type Told = readonly string[];

/** The jobs by the tags their marks begin with. */
export const JOB_HEADS = ['Mark', 'Job', 'For', 'Pieces', 'Blanks'] as const;

export function jobRows({ together, parts, blanks }: Plan): Told[] {
	const count = (of: Plan['parts'] | Plan['blanks'], tag: string): string =>
		String(
			of.filter(({ id }) => id.startsWith(`${tag}.`)).reduce((sum, { count }) => sum + count, 0),
		);
	return (together?.jobs ?? []).map((job) => [
		job.tag,
		[job.number === job.tag ? '' : job.number, job.name].filter((t) => t !== '').join(' '),
		[job.customer, job.vehicle].filter((t) => t !== '').join(', '),
		count(parts, job.tag),
		count(blanks, job.tag),
	]);
}

/** Board by board and cloth by cloth: laid out at once, or each job's as it is by itself. */
export const WAY_HEADS = ['What', 'For', 'Laid out', 'Together', 'Apart'] as const;

const WAYS: Readonly<Record<LaidWay, string>> = {
	together: 'all in one layout',
	apart: 'job by job: one layout was no cheaper',
	alone: 'for this job alone',
};

export function wayRows({ together, job }: Plan): Told[] {
	if (!together) return [];
	const figures = figuresOn(job.shop.ruler);
	const sheets = (n: number): string => `${n} ${n === 1 ? 'sheet' : 'sheets'}`;
	return [
		...together.boards.map((b) => [
			...[b.name, b.jobs.join(', '), WAYS[b.way], sheets(b.sheets), sheets(b.apart)],
		]),
		...together.cloths.map((c) => [
			...[c.name, c.jobs.join(', '), WAYS[c.way], figures.bench(c.pull), figures.bench(c.apart)],
		]),
	];
}

/** What planning them together saves. */
export const SAVING_HEADS = ['What', 'Together', 'Apart', 'Saved'] as const;

export function savingRows({ together, job }: Plan): Told[] {
	if (!together) return [];
	const { currency, ruler } = job.shop;
	const row = (what: string, of: (tally: Tally) => number, told: (n: number) => string): Told => {
		const [now, apart] = [of(together.now), of(together.apart)];
		const saved = apart - now;
		return [what, told(now), told(apart), saved < 0 ? `${told(-saved)} more` : told(saved)];
	};
	const amount = (n: number): string => plainMoney(money(n), currency, ruler.decimal);
	return [
		row('Sheets and offcuts to cut', (t) => t.sheets, String),
		row('Sheets to buy', (t) => t.bought, String),
		row(
			'Cloth to pull',
			(t) => t.pull,
			(n) => pullText(n, ruler),
		),
		row(`To order, ${currency}`, (t) => t.ordered, amount),
		row(`Off the rack at list price, ${currency}`, (t) => t.fromRack, amount),
		row('Time', (t) => Math.round(t.minutes), timeText),
		row(`Labour, ${currency}`, (t) => t.labour, amount),
	];
}

/** '2 sheets, 0.25 m of cloth, EUR 92.93 and 10 min are saved'; what takes more is told as well. */
export function savingText({ together, job }: Plan): string {
	if (!together) return '';
	const { now, apart } = together;
	const { currency, ruler } = job.shop;
	const cost = (t: Tally): number => t.ordered + t.fromRack + t.labour;
	const sheets = apart.sheets - now.sheets;
	const told = [
		[sheets, `${Math.abs(sheets)} ${Math.abs(sheets) === 1 ? 'sheet' : 'sheets'}`],
		[apart.pull - now.pull, `${pullText(Math.abs(apart.pull - now.pull), ruler)} of cloth`],
		[
			Math.round(apart.minutes - now.minutes),
			timeText(Math.round(Math.abs(apart.minutes - now.minutes))),
		],
		[
			cost(apart) - cost(now),
			printMoney(money(Math.abs(cost(apart) - cost(now))), currency, ruler.decimal),
		],
	] as const;
	const less = told.filter(([n]) => n > 0).map(([, text]) => text);
	const more = told.filter(([n]) => n < 0).map(([, text]) => text);
	if (less.length === 0 && more.length === 0) return 'Together they take what they take apart.';
	return [
		less.length > 0 ? `Together they take ${less.join(', ')} less.` : '',
		more.length > 0 ? `They take ${more.join(', ')} more.` : '',
	]
		.filter((t) => t !== '')
		.join(' ');
}

/** What apart means, so that nobody takes the saving for more than it is. */
export const APART_MEANS =
	'Apart: one job after the other, each with what those before it left on the rack; what falls off one is not passed on to the next.';

/** Each job's share of all that they cost; the last row adds up. */
export const SHARE_HEADS = [
	...(['Mark', 'Job', 'Board', 'Cloth', 'To order', 'Off the rack', 'Labour', 'Sum'] as const),
];

export function shareRows({ together, job }: Plan): Told[] {
	if (!together) return [];
	const { currency, ruler } = job.shop;
	const amount = (n: number): string => plainMoney(money(n), currency, ruler.decimal);
	const area = (mm2: number): string => amountText({ number: mm2 / 1e6, unit: 'm2' }, ruler);
	const costs = (of: Pick<JobShare, 'ordered' | 'fromRack' | 'labour'>): string[] => [
		...[of.ordered, of.fromRack, of.labour].map(amount),
		amount(of.ordered + of.fromRack + of.labour),
	];
	const sum = (of: (job: JobShare) => number): number =>
		together.jobs.reduce((total, share) => total + of(share), 0);
	return [
		...together.jobs.map((j) => [j.tag, j.name, area(j.boardArea), area(j.clothArea), ...costs(j)]),
		[
			'',
			'All',
			area(sum((j) => j.boardArea)),
			area(sum((j) => j.clothArea)),
			...costs(together.now),
		],
	];
}

export const HOW_SHARED =
	'Sheets and cloth are shared by the area that lies on them, packs by what each job takes of them, work at the saw by area of board; all other work is each job’s own.';

function timeText(minutes: number): string {
	const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
	return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
		.filter((t) => t !== '')
		.join(' ');
}

const pullText = (pull: number, ruler: Ruler): string =>
	amountText({ number: toMm(pull) / 1000, unit: 'm' }, ruler) || 'none';
