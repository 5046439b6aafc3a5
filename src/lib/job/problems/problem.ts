/** Where something lies in a job file, as keys and indexes: ['boxes', 0, 'width']. */
export type Path = readonly (string | number)[];

/**
 * Something the person has to look at. A value, never thrown: all problems of a job are returned at
 * once, and what can still be planned is planned.
 */
export interface Problem {
	/** Where in the job file. */
	readonly path: Path;
	/** What is wrong, in a full sentence that shows the value seen. */
	readonly what: string;
	/** What would be right, in a full sentence. */
	readonly fix: string;
	/**
	 * 'stop': this thing is left out of the plan. 'check': it is planned as asked, look before
	 * cutting. 'note': nothing is wrong with the plan, but somebody may want to know; it is said
	 * under a heading of its own and refuses nothing.
	 */
	readonly kind: 'stop' | 'check' | 'note';
	/** Of a note: what to write into the job where it is to be said no more. */
	readonly accept?: { readonly path: Path; readonly value: number };
}

/** What has to be looked at before anything is cut: all but the notes. */
export function troublesOf(problems: readonly Problem[]): Problem[] {
	return problems.filter((p) => p.kind !== 'note');
}

/** What is only to be known. */
export function notesOf(problems: readonly Problem[]): Problem[] {
	return problems.filter((p) => p.kind === 'note');
}

/** All problems, each said once: the two hands of a pair have the same to say. */
export function saidOnce(problems: readonly Problem[]): Problem[] {
	return [...new Map(problems.map((p) => [`${p.path.join('/')} ${p.what}`, p])).values()];
}

/** `boxes[0].width`, for the command line and the printed page. */
export function pathText(path: Path): string {
	return path
		.map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`))
		.join('');
}
