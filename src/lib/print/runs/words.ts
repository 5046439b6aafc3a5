import type { ReelPlan, RunPlan } from '../../runs';
import type { Ruler } from '../../measure';
import { amountText, type Figures } from '../wording';

/** Said wherever runs are shown. */
export const LENGTHS_ONLY =
	'Lengths only: no cable, fuse or hose is sized here. A licensed person says what is used, how it is fused and where it may run.';

/** 'Battery to Amplifier board'. */
export const endsText = ({ ends: [one, other] }: RunPlan): string => `${one.name} to ${other.name}`;

/** How the length comes about: 'sill 1850 + pillar 620, 10 % slack, 150 + 150 at the ends'. */
export function madeUpText(run: RunPlan, figures: Figures, decimal: string): string {
	const stretches = run.stretches.map(({ name, length }) =>
		[name, figures.bench(length)].filter((t) => t !== '').join(' '),
	);
	const slack = run.slack === 0 ? 'no slack' : `${String(run.slack).replace('.', decimal)} % slack`;
	const [one, other] = run.ends.map(({ extra }) => figures.bench(extra));
	return `${stretches.join(' + ')}; ${slack}; ${one} + ${other} at the ends`;
}

/** What it is cut from, or why from nothing. */
export function cutFromText(run: RunPlan, reels: readonly ReelPlan[]): string {
	if (run.uncut === 'too long') return 'longer than one length of it';
	return reels.find((r) => r.reel === run.reel)?.name ?? 'not said';
}

/** As they are cut: what they are cut from, the longest first; what is cut from nothing last. */
export function inCuttingOrder(
	runs: readonly RunPlan[],
	reels: readonly ReelPlan[],
): readonly RunPlan[] {
	const place = (run: RunPlan): number => {
		const at = run.uncut === '' ? reels.findIndex((r) => r.reel === run.reel) : -1;
		return at < 0 ? reels.length : at;
	};
	return runs.toSorted((a, b) => place(a) - place(b) || b.cut - a.cut);
}

/** One length and what is cut from it, in words, once for those alike. */
export interface LengthRow {
	readonly source: string;
	readonly length: string;
	readonly runs: string;
	readonly left: string;
}

export function lengthRows(reel: ReelPlan, figures: Figures): LengthRow[] {
	const rows = new Map<string, { row: LengthRow; times: number }>();
	for (const { source, length, runs, left } of reel.lengths) {
		const row = {
			source: source === 'rack' ? 'on the rack' : 'bought',
			length: figures.bench(length),
			runs: tallied(runs),
			left: figures.bench(left),
		};
		const key = JSON.stringify(row);
		rows.set(key, { row, times: (rows.get(key)?.times ?? 0) + 1 });
	}
	return [...rows.values()].map(({ row, times }) =>
		times === 1 ? row : { ...row, length: `${times} × ${row.length}` },
	);
}

/** 'W1, W2 × 3'. */
function tallied(marks: readonly string[]): string {
	const counts = new Map<string, number>();
	for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1);
	return [...counts].map(([mark, n]) => (n === 1 ? mark : `${mark} × ${n}`)).join(', ');
}

/** '12.4 m', '41 ft': what all runs of a reel come to. */
export const metresText = (metres: number, ruler: Ruler): string =>
	amountText({ number: metres, unit: 'm' }, ruler) || '0';
