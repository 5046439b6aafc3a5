import { UNIT, type Need } from '../design';
import { buyCounted, type Job, packsDone, type Problem, type Sundry } from '../job';
import { nth, type Ruler } from '../measure';
import { inMetres, type ReelPlan } from '../runs';
import { contentOf, sundryLeft, typedPacksLeft } from './booked';
import type { Amount, OrderLine } from './types';

/**
 * Kinds sold by measure, where some runs down the side of the pot: the shop's spare is added to
 * these.
 */
const MEASURED: ReadonlySet<Amount['unit']> = new Set(['m2', 'm', 'L']);
/** Counted in sheets laid over each other: what is lost of them is their overlap, and no more. */
const IN_SHEETS: ReadonlySet<Sundry['kind']> = new Set(['damping']);
/** A pack that is short by less than this share is not opened for a rounding error. */
const CRUMB = 1e-9;

export function sundryLines(
	job: Job,
	needs: readonly Need[],
	reels: readonly ReelPlan[],
): { lines: OrderLine[]; problems: Problem[] } {
	const lines: OrderLine[] = [];
	const problems: Problem[] = [];
	const { sundries } = job.stock;
	for (const mine of servedTogether(needs)) {
		const { kind, of } = nth(mine, 0);
		const amount = mine.reduce((sum, n) => sum + n.amount, 0);
		const sundry = sundries.find((s) => (of === undefined ? s.kind === kind : s.id === of));
		const purposes = [...new Set(mine.map((n) => n.for))];
		const reel = reels.find((r) => r.reel === sundry?.id);
		if (sundry && reel) lines.push(reelLine(job, sundry, reel, purposes));
		else if (sundry) lines.push(line(job, sundry, amount, purposes));
		else problems.push(notListed(kind, amount, purposes, job.shop.ruler));
	}
	// What the job takes of a thing beside what the plan counts of the first of its kind.
	const listed = new Set(lines.map((l) => l.id));
	for (const more of sundries.filter((s) => s.use > 0 && !listed.has(s.id)))
		lines.push(line(job, more, 0, []));
	// What was used whole is no line of the order.
	const open = lines.filter(
		(l) => packsDone(job.used, l.id) === 0 || l.need.number > CRUMB * l.pack,
	);
	return { lines: open, problems };
}

/** Needs of one kind that are taken from the same thing, in the order they come up. */
function servedTogether(needs: readonly Need[]): Need[][] {
	const served = new Map<string, Need[]>();
	for (const need of needs.filter((n) => n.amount > 0)) {
		const key = JSON.stringify([need.kind, need.of]);
		served.set(key, [...(served.get(key) ?? []), need]);
	}
	return [...served.values()];
}

/** `counted` is what the plan takes; packs typed for the job come to it. */
function line(job: Job, sundry: Sundry, counted: number, purposes: string[]): OrderLine {
	const unit = UNIT[sundry.kind];
	const spared = MEASURED.has(unit) && !IN_SHEETS.has(sundry.kind);
	const sparePercent = spared ? job.shop.spare : 0;
	const pack = contentOf(sundry);
	const { laid, typed } = sundryLeft(job.used, sundry, counted);
	const wanted = laid * (1 + sparePercent / 100) + typed;
	const rack = sundry.owned * pack;
	const packs = Math.max(0, Math.ceil((wanted - rack) / pack - CRUMB));
	const fromRack = Math.min(rack, wanted);
	const of = { need: laid + typed, fromRack, short: wanted - fromRack };
	return { ...boughtIn(sundry, { ...of, pack, packs, purposes }), sparePercent };
}

/**
 * What runs are cut from: packs by the lengths that come out of them. The slack of the runs is
 * their spare; packs typed for the job are bought beside, and of what was used those come first.
 */
function reelLine(job: Job, sundry: Sundry, reel: ReelPlan, purposes: string[]): OrderLine {
	const { pack } = sundry;
	const typed = typedPacksLeft(job.used, sundry) * pack;
	const need = inMetres(reel.need) + typed;
	const cut = inMetres(reel.fromRack);
	const fromRack = cut + Math.min(typed, Math.max(0, sundry.owned * pack - cut));
	const packs = reel.packs + Math.ceil((typed - (fromRack - cut)) / pack - CRUMB);
	return boughtIn(sundry, { need, fromRack, short: need - fromRack, pack, packs, purposes });
}

/** What is taken of a sundry, in the unit it is counted in, and the packs that are short. */
interface Taken {
	/** Without spare. */
	readonly need: number;
	readonly fromRack: number;
	/** With spare, less what is on the rack. */
	readonly short: number;
	readonly pack: number;
	readonly packs: number;
	readonly purposes: readonly string[];
}

function boughtIn(sundry: Sundry, { pack, packs, purposes, ...taken }: Taken): OrderLine {
	const unit = UNIT[sundry.kind];
	const { count: buy, each, total, more } = buyCounted(sundry, packs);
	return {
		group: 'sundries',
		id: sundry.id,
		what: sundry.name,
		code: sundry.code,
		supplier: sundry.supplier ?? '',
		priced: sundry.priced,
		need: { number: taken.need, unit },
		rack: { number: sundry.owned * pack, unit },
		fromRack: { number: taken.fromRack, unit },
		buy,
		more,
		unit: 'pack',
		pack,
		each,
		total,
		spare: { number: Math.max(0, buy * pack - taken.short), unit },
		sparePercent: 0,
		kind: sundry.kind,
		for: sundry.use > 0 ? [...purposes, 'this job'] : purposes,
	};
}

const M_PER_FOOT = 0.3048;
/** What each unit is counted in where lengths are in inches, in words, and how many make one. */
const FEET: Readonly<Record<string, readonly [word: string, each: number]>> = {
	m: ['feet', M_PER_FOOT],
	m2: ['square feet', M_PER_FOOT ** 2],
	L: ['cubic feet', 28.316846592],
};

/** `1.2 square metres`, `13 square feet`. */
function amountWords(amount: number, unit: string, ruler: Ruler): string {
	const metric = unit.replace('m2', 'square metres').replace(/^m$/, 'metres');
	const [word, each] = (ruler.unit === 'in' ? FEET[unit] : undefined) ?? [metric, 1];
	return `${Number((amount / each).toFixed(2))} ${word}`.replace('.', ruler.decimal);
}

function notListed(
	kind: Sundry['kind'],
	amount: number,
	purposes: readonly string[],
	ruler: Ruler,
): Problem {
	return {
		path: ['stock', 'sundries'],
		what: `The work takes ${kind.replace('-', ' ')} (${amountWords(amount, UNIT[kind], ruler)}, for ${purposes[0]}), but the stock lists none, so the order leaves it out.`,
		fix: `Add ${kind.replace('-', ' ')} to the sundries with what one pack holds and costs.`,
		kind: 'note',
	};
}
