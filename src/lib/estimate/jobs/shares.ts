import type { Need, Part } from '../../design';
import { type Job, rollOf, sheetOf } from '../../job';
import type { BoardLayouts, ClothLayouts } from '../../layout';
import { money, type Money, wholeShares } from '../../measure';
import type { Blank } from '../../wrap';
import { isAtTheSaw } from '../labour';
import { worthFromRack, worthOf } from '../material';
import type { LabourLine, Order, OrderLine, Quote } from '../types';
import type { JobShare } from './together';

/** One of several jobs: who it is, what is made for it, and the work it would be by itself. */
export interface JobWork extends Pick<
	JobShare,
	'tag' | 'number' | 'name' | 'customer' | 'vehicle'
> {
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	readonly needs: readonly Need[];
	/** Packs typed for it, by the mark of the sundry. */
	readonly typed: ReadonlyMap<string, number>;
	readonly labour: readonly LabourLine[];
}

/** What they come to in one go. */
interface Costs {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly order: Order;
	readonly quote: Pick<Quote, 'labour' | 'labourCost'>;
}

/**
 * Shares what several jobs cost in one go out to them: sheets and cloth by the area that each has
 * on them, packs by what each takes of them, work at the saw by area, and the rest of the work as
 * it is each job's own. Every column adds up to its total to the last minor unit.
 */
export function shareCosts(job: Job, made: Costs, works: readonly JobWork[]): JobShare[] {
	const areas = works.map((work) => areasOf(work, made));
	const weights = (line: OrderLine): number[] =>
		works.map((work, i) => weightOf(job, line, work, areas[i] ?? new Map()));
	const byJob = (worth: (line: OrderLine) => number): number[] =>
		made.order.lines.reduce(
			(sums, line) => added(sums, parted(worth(line), weights(line))),
			works.map(() => 0),
		);
	const ordered = toTheCent(
		byJob((line) => line.total),
		made.order.total,
	);
	const fromRack = toTheCent(
		byJob((line) => worthOf(job, line)),
		money(worthFromRack(job, made.order)),
	);
	const labour = labourShares(made, works, areas);
	return works.map(({ tag, number, name, customer, vehicle }, i) => ({
		...{ tag, number, name, customer, vehicle },
		boardArea: sumOf(areas[i], 'board '),
		clothArea: sumOf(areas[i], 'cloth '),
		ordered: ordered[i] ?? money(0),
		fromRack: fromRack[i] ?? money(0),
		labour: labour[i] ?? money(0),
	}));
}

/** Areas that are still to be cut, by 'board ' or 'cloth ' and its mark. */
type Areas = ReadonlyMap<string, number>;

const TICKS2_PER_MM2 = 1600 ** 2;

function areasOf({ parts, blanks }: JobWork, { boards, cloths }: Costs): Areas {
	const own = new Set([...parts, ...blanks].map(({ id }) => id));
	const area = (placed: readonly { id: string; length: number; width: number }[]): number =>
		placed.reduce((sum, p) => sum + (own.has(p.id) ? p.length * p.width : 0), 0) / TICKS2_PER_MM2;
	return new Map([
		...boards.map(({ material, answer, sources }): [string, number] => [
			`board ${material}`,
			area(answer.layouts.flatMap((l, i) => (sources[i]?.cut ? [] : l.placed))),
		]),
		...cloths.map(({ cloth, rolls }): [string, number] => [
			`cloth ${cloth}`,
			area(rolls.flatMap((r) => (r.pulled ? [] : r.answer.placed))),
		]),
	]);
}

const sumOf = (areas: Areas | undefined, of: string): number =>
	[...(areas ?? [])].reduce((sum, [key, area]) => sum + (key.startsWith(of) ? area : 0), 0);

/** How much of an order line is this job's. */
function weightOf(job: Job, line: OrderLine, work: JobWork, areas: Areas): number {
	const { needs, typed } = work;
	if (line.group === 'sheets') return areas.get(`board ${sheetOf(job, line.id)?.material}`) ?? 0;
	if (line.group === 'cloth') return areas.get(`cloth ${rollOf(job, line.id)?.cloth}`) ?? 0;
	const sundry = job.stock.sundries.find((s) => s.id === line.id);
	const laid = needs.filter((n) => n.of === line.id).reduce((sum, n) => sum + n.amount, 0);
	const all = laid * (1 + (sundry?.overlap ?? 0) / 100);
	return all * (1 + line.sparePercent / 100) + (typed.get(line.id) ?? 0) * line.pack;
}

function labourShares(
	{ quote }: Costs,
	works: readonly JobWork[],
	areas: readonly Areas[],
): readonly Money[] {
	const cost = (lines: readonly LabourLine[]): number => lines.reduce((sum, l) => sum + l.cost, 0);
	const sawn = parted(
		cost(quote.labour.filter(isAtTheSaw)),
		areas.map((a) => sumOf(a, 'board ')),
	);
	const own = works.map(({ labour }) => cost(labour.filter((l) => !isAtTheSaw(l))));
	return toTheCent(added(sawn, own), quote.labourCost);
}

/** In proportion; where nobody has any of it, all of it to the first. */
function parted(whole: number, weights: readonly number[]): number[] {
	const sum = weights.reduce((a, b) => a + b, 0);
	return weights.map((w, i) => (sum > 0 ? (whole * w) / sum : i === 0 ? whole : 0));
}

const added = (a: readonly number[], b: readonly number[]): number[] =>
	a.map((n, i) => n + (b[i] ?? 0));

const toTheCent = (exact: readonly number[], total: Money): Money[] =>
	wholeShares(exact, total).map(money);
