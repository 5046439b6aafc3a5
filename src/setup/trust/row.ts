/** One line of the table: what was done to the planner, and how it stood. */
export interface Row {
	readonly what: string;
	readonly tried: number;
	readonly survived: number;
	/** Things kept that were lost: null where nothing is kept. */
	readonly lost?: number;
	/** Strange words that were run. */
	readonly executed?: number;
	readonly crashed?: number;
	/** How many cases came to each end. */
	readonly ends?: Readonly<Record<string, number>>;
	/** Seconds of work of the slowest case. */
	readonly slowest?: number;
	/** MiB. */
	readonly peak?: number;
	/** Each case that did not stand, in words. */
	readonly found: readonly string[];
	/** Figures of this part alone. */
	readonly notes: readonly string[];
	readonly notCovered: string;
}

/** What a part is asked for. */
export interface Asked {
	readonly seed: number;
	/** Cases; the part's own long number when absent. */
	readonly count?: number;
	/** Processes beside each other. */
	readonly lanes: number;
	/** Tells the terminal how far it is. */
	readonly note: (line: string) => void;
}

export type Part = (asked: Asked) => Promise<readonly Row[] | Row>;
