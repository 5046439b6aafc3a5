import type { JobFile, Path } from '../../../job';
import { insert, move, pathKey, put, remove } from './path';

/** A place of a job and what is to stand there. */
interface Move {
	readonly path: Path;
	readonly value: unknown;
}

/** The ways a job is changed by hand; each is one change of its file, told in words. */
export abstract class JobEdits {
	/**
	 * @param run changes with the same one follow each other as one step of undo; null for a step
	 *   of its own
	 */
	protected abstract change(
		make: (file: JobFile) => JobFile,
		what: string,
		run: string | null,
	): void;

	/** A letter typed into the field at `path`; letters of one field are one step of undo. */
	type(path: Path, value: unknown, what: string): void {
		this.change((file) => put(file, path, value), what, pathKey(path));
	}

	/** Fields that move together while something is dragged: one step until it is let go. */
	drag(all: readonly Move[], what: string): void {
		const run = all.map(({ path }) => pathKey(path)).join();
		const moved = (file: JobFile): JobFile =>
			all.reduce((f, { path, value }) => put(f, path, value), file);
		this.change(moved, what, run);
	}

	/** A change that is a step of its own: a choice, a tick. */
	set(path: Path, value: unknown, what: string): void {
		this.change((file) => put(file, path, value), what, null);
	}

	insert(path: Path, value: unknown, what: string, index?: number): void {
		this.change((file) => insert(file, path, value, index), what, null);
	}

	remove(path: Path, index: number, what: string): void {
		this.change((file) => remove(file, path, index), what, null);
	}

	move(path: Path, from: number, to: number, what: string): void {
		this.change((file) => move(file, path, from, to), what, null);
	}

	/** Several changes as one step. */
	alter(make: (file: JobFile) => JobFile, what: string): void {
		this.change(make, what, null);
	}
}
