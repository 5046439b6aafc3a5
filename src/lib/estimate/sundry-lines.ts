import { UNIT, type Need } from '../design';
import type { Job, Problem, Sundry } from '../job';
import { money } from '../measure';
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
): { lines: OrderLine[]; problems: Problem[] } {
	const lines: OrderLine[] = [];
	const problems: Problem[] = [];
	for (const kind of new Set(needs.map((n) => n.kind))) {
		const mine = needs.filter((n) => n.kind === kind && n.amount > 0);
		const amount = mine.reduce((sum, n) => sum + n.amount, 0);
		if (amount <= 0) continue;
		const sundry = job.stock.sundries.find((s) => s.kind === kind);
		const purposes = [...new Set(mine.map((n) => n.for))];
		if (sundry) lines.push(line(job, sundry, amount, purposes));
		else problems.push(notListed(kind, amount, purposes));
	}
	for (const other of job.stock.sundries.filter((s) => s.kind === 'other' && s.use > 0))
		lines.push(line(job, other, other.use, ['this job']));
	return { lines, problems };
}

function line(job: Job, sundry: Sundry, amount: number, purposes: string[]): OrderLine {
	const unit = UNIT[sundry.kind];
	const spared = MEASURED.has(unit) && !IN_SHEETS.has(sundry.kind);
	const sparePercent = spared ? job.shop.spare : 0;
	// What is of no kind is counted in packs: nobody knows in what its content would be.
	const pack = unit === 'packs' ? 1 : sundry.pack;
	const wanted = amount * (1 + sundry.overlap / 100) * (1 + sparePercent / 100);
	const rack = sundry.owned * pack;
	const buy = Math.max(0, Math.ceil((wanted - rack) / pack - CRUMB));
	return {
		group: 'sundries',
		id: sundry.id,
		what: sundry.name,
		code: sundry.code,
		need: { number: amount * (1 + sundry.overlap / 100), unit },
		rack: { number: rack, unit },
		fromRack: { number: Math.min(rack, wanted), unit },
		buy,
		unit: 'pack',
		pack,
		each: sundry.price,
		total: money(sundry.price * buy),
		spare: { number: Math.max(0, buy * pack - Math.max(0, wanted - rack)), unit },
		sparePercent,
		kind: sundry.kind,
		for: purposes,
	};
}

function notListed(kind: Sundry['kind'], amount: number, purposes: readonly string[]): Problem {
	const unit = UNIT[kind].replace('m2', 'square metres').replace(/^m$/, 'metres');
	return {
		path: ['stock', 'sundries'],
		what: `The work takes ${kind.replace('-', ' ')} (${Number(amount.toFixed(2))} ${unit}, for ${purposes[0]}), but the stock lists none, so the order leaves it out.`,
		fix: `Add ${kind.replace('-', ' ')} to the sundries with what one pack holds and costs.`,
		kind: 'note',
	};
}
