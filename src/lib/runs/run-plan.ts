import type { Job, Run } from '../job';
import { type Length, ticks, TICKS_PER_INCH, TICKS_PER_MM, type Ruler } from '../measure';

/** One end of a run. */
export interface RunEnd {
	/** What it is joined to; 'end A' or 'end B' where nobody has said. */
	readonly name: string;
	/** Left for the joint. */
	readonly extra: Length;
}

/** A run as it is cut. */
export interface RunPlan {
	readonly id: string;
	/** What is written on it. */
	readonly label: string;
	readonly name: string;
	/** Mark of the cable, loom or hose it is cut from; '' for none on the rack. */
	readonly reel: string;
	readonly stretches: readonly { readonly name: string; readonly length: Length }[];
	/** What the stretches come to, of one. */
	readonly measured: Length;
	/** Per cent. */
	readonly slack: number;
	readonly ends: readonly [RunEnd, RunEnd];
	/** Length of one as it is cut. */
	readonly cut: Length;
	readonly count: number;
	/** Why it is cut from nothing; '' where it is. */
	readonly uncut: '' | 'no reel' | 'too long';
}

/** The marks of a tape: a run is cut to one. */
const markOf = ({ unit, fraction }: Ruler): number =>
	unit === 'in' ? TICKS_PER_INCH / fraction : TICKS_PER_MM;

/** A share of a mark that is a rounding error. */
const CRUMB = 1e-6;

/**
 * Stretches with their slack and what is left at both ends, up to the next mark of the tape: a
 * whole millimetre, or the ruler's fraction of an inch.
 */
export function cutLength(run: Pick<Run, 'stretches' | 'slack' | 'one' | 'other'>, ruler: Ruler) {
	const mark = markOf(ruler);
	const measured = run.stretches.reduce((sum, s) => sum + s.length, 0);
	const exact = (measured * (100 + run.slack)) / 100 + run.one.extra + run.other.extra;
	const cut = ticks(Math.ceil(exact / mark - CRUMB) * mark);
	return { measured: ticks(measured), cut };
}

/** A run of the job, whatever it is cut from. */
export function plannedRun({ shop }: Job, run: Run): Omit<RunPlan, 'reel' | 'uncut'> {
	const { id, name, stretches, slack, count, one, other } = run;
	const end = ({ name, extra }: Run['one'], letter: string): RunEnd => ({
		...{ name: name === '' ? `end ${letter}` : name, extra },
	});
	return {
		...{ id, label: id, name, stretches, slack, count },
		...cutLength(run, shop.ruler),
		ends: [end(one, 'A'), end(other, 'B')],
	};
}
