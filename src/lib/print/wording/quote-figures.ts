import { money, type Money } from '../../measure';
import type { Plan } from '../../plan';

/** The figures a customer is shown: those sent, while they hold, else those of the plan. */
export interface QuoteFigures {
	/** The day it was sent; null for a quote that is not sent yet. */
	readonly sent: string | null;
	readonly lines: readonly { readonly what: string; readonly price: Money }[];
	readonly net: Money;
	readonly taxPercent: number;
	readonly taxed: Money;
	readonly tax: Money;
	readonly total: Money;
	readonly options: readonly QuotedOption[];
}

interface QuotedOption {
	readonly name: string;
	readonly note: string;
	readonly total: Money;
	readonly difference: Money;
}

/** As the plan has it now. */
export function quoteNow({ job, quote, options }: Plan): QuoteFigures {
	const { lines, net, taxed, tax, total } = quote;
	return {
		...{ sent: null, lines, net, taxPercent: job.shop.tax.percent, taxed, tax, total },
		options: options
			.filter((o) => o.offered)
			.map(({ name, note, total, difference }) => ({ name, note, total, difference })),
	};
}

/** As the customer has it: what was sent stays until another takes its place. */
export function quoteShown(plan: Plan): QuoteFigures {
	const last = plan.job.sent.at(-1);
	if (!last || last.replaced) return quoteNow(plan);
	const { date, lines, net, taxPercent, taxed, tax, total } = last;
	return {
		...{ sent: date, lines, net, taxPercent, taxed, tax, total },
		options: last.options.map((o) => ({ ...o, difference: money(o.total - total) })),
	};
}

/** A figure of the quote that is another now than it was when it was sent. */
export interface SinceSent {
	readonly what: string;
	readonly sent: Money | null;
	readonly now: Money | null;
}

/** What changed since the quote was sent, a line each; none where nothing did or none is sent. */
export function sinceSent(plan: Plan): SinceSent[] {
	const was = quoteShown(plan);
	if (was.sent === null) return [];
	const now = quoteNow(plan);
	const rows = (of: QuoteFigures): Map<string, Money> =>
		new Map([
			...numbered(of.lines.map(({ what, price }) => [what, price] as const)),
			...(plan.options.length > 0
				? numbered(of.options.map((o) => [`Option ${o.name}, in all`, o.total] as const))
				: []),
			['Net', of.net],
			['Tax', of.tax],
			['Total', of.total],
		]);
	const [old, fresh] = [rows(was), rows(now)];
	return [...new Set([...old.keys(), ...fresh.keys()])]
		.map((what) => ({ what, sent: old.get(what) ?? null, now: fresh.get(what) ?? null }))
		.filter(({ sent, now }) => sent !== now);
}

/** Two things of one name stay two lines. */
function numbered(rows: readonly (readonly [string, Money])[]): (readonly [string, Money])[] {
	const seen = new Map<string, number>();
	return rows.map(([what, amount]) => {
		const n = (seen.get(what) ?? 0) + 1;
		seen.set(what, n);
		return [n === 1 ? what : `${what} (${n})`, amount];
	});
}
