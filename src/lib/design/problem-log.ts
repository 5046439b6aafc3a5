import type { Problem, Path } from '../job';

/** Collects every problem of one box or panel, so that one visit to the bench shows them all. */
export class ProblemLog {
	readonly problems: Problem[] = [];
	constructor(private readonly root: Path) {}

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
