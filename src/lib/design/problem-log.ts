import type { Problem, Path } from '../job';
import { sayLeast, sayLengths, sayMost, sayRange, sayVolume, type Ruler } from '../measure';

/**
 * Collects every problem of one box or panel, so that one visit to the bench shows them all. It
 * knows the job's ruler, so that each is told in the units somebody measures in.
 */
export class ProblemLog {
	readonly problems: Problem[] = [];
	constructor(
		private readonly root: Path,
		readonly ruler: Ruler,
	) {}

	/** A length with its unit, or several with one: `600 mm`, `600 x 400 mm`. */
	say(l: number | readonly number[], by = ' x '): string {
		return sayLengths(typeof l === 'number' ? [l] : l, this.ruler, by);
	}

	/** What lies between two limits: `3 to 5 mm`. */
	range(from: number, to: number): string {
		return sayRange(from, to, this.ruler);
	}

	/** A length beside one whose unit is said: `600`. */
	bare(l: number): string {
		return this.say(l).replace(/ [a-z]+$/, '');
	}

	/** Litres. */
	volume(litres: number): string {
		return sayVolume(litres, this.ruler);
	}

	/** A limit from below: rounded up, so that what is said is enough. */
	least(l: number): string {
		return sayLeast(l, this.ruler);
	}

	/** A limit from above: rounded down, so that what is said is not too much. */
	most(l: number): string {
		return sayMost(l, this.ruler);
	}

	/** All that another one has collected. */
	add(other: ProblemLog): void {
		this.problems.push(...other.problems);
	}

	/** What is named is left out of the plan. */
	stop(path: Path, what: string, fix: string): void {
		this.problems.push({ path: [...this.root, ...path], what, fix, kind: 'stop' });
	}

	/** Where something was left out, as seen from the root. */
	refused(): Path[] {
		const stops = this.problems.filter((p) => p.kind === 'stop');
		return stops.map((p) => p.path.slice(this.root.length));
	}

	/** Nothing is wrong with the plan; it is only to be known. */
	note(path: Path, what: string, fix: string): void {
		this.problems.push({ path: [...this.root, ...path], what, fix, kind: 'note' });
	}

	/** It is planned as asked; somebody has to look before cutting. */
	check(path: Path, what: string, fix: string): void {
		this.problems.push({ path: [...this.root, ...path], what, fix, kind: 'check' });
	}
}
