import type { JobFile } from '../../job';
import type { Progress, Saving, SpoiledAt } from '../../layout';
import type { Plan, PlannedAgain } from '../../plan';
import type { OutputKind, PdfKind, ShownPages } from '../../print';
import type { PlannedTogether } from '../../together';

/** What the page asks of one worker that plans. */
export interface PlanningWorker {
	/** The plan; null when a newer request overtook this one. */
	plan(file: unknown, ask: Ask, tell: (progress: Progress) => void): Promise<Plan | null>;
	/**
	 * The plan with its options priced; null when a newer request overtook this one or it was
	 * stopped: an option that was not looked at to its end has no price.
	 */
	options(
		plan: Plan,
		file: unknown,
		ask: Pick<Ask, 'n'>,
		tell: (progress: Progress) => void,
	): Promise<Plan | null>;
	/**
	 * The plan of several jobs in one go, or why there is none; null when a newer request overtook
	 * this one.
	 */
	together(
		files: readonly unknown[],
		ask: Pick<Ask, 'n'>,
		tell: (progress: Progress) => void,
	): Promise<PlannedTogether | null>;
	/** What would save a sheet; null when a newer request overtook this one. */
	savings(plan: Plan, n: number): Promise<readonly Saving[] | null>;
	/** The ways to get a spoiled piece again; null when a newer request overtook this one. */
	again(
		plan: Plan,
		file: JobFile,
		at: SpoiledAt,
		ask: Pick<Ask, 'n'>,
	): Promise<readonly PlannedAgain[] | null>;
	/** Stop looking: the request under way answers with the best it has. */
	stop(): Promise<void> | void;
}

/** What it asks of all of them. */
export interface Planner extends Omit<PlanningWorker, 'together' | 'again'> {
	/**
	 * The best plan of several searches side by side, each with its own seed from the asked one on;
	 * null when overtaken.
	 */
	search(file: unknown, ask: SearchAsk, tell: (progress: Progress) => void): Promise<Plan | null>;
}

/** What it asks of the one that prints. */
export interface Printer {
	/** Output files of a plan. Rejects with a sentence when a face cannot be fetched. */
	outputFiles(kind: OutputKind, plan: Plan, faces: FaceUrls): Promise<readonly ReadyFile[]>;
	/** Some pages of a paper as they will be printed. */
	shownPages(kind: PdfKind, plan: Plan, ...which: PagesAsked): Answer<ShownPages>;
}

/** From which page on, counted from 0, how many, and for the screen (css) or for paper itself. */
export type PagesAsked = readonly [from: number, count: number, colours?: 'css' | 'inline'];

/** Across the wall of a worker, or in the room itself. */
type Answer<T> = T | Promise<T>;

export interface Ask {
	/** Which request this is; a higher one overtakes it. */
	readonly n: number;
	/** Work units of each search; the job's own when absent. */
	readonly effort?: number;
	/** The job's own when absent. */
	readonly seed?: number;
}

export interface SearchAsk extends Ask {
	readonly effort: number;
	readonly seed: number;
}

/** A file ready to be kept. */
export interface ReadyFile {
	readonly name: string;
	readonly type: string;
	readonly bytes: Uint8Array;
}

/** Where the faces lie, absolute: a worker has another idea of where it stands. */
export interface FaceUrls {
	readonly regular: string;
	readonly semibold: string;
	readonly fallback: string;
}
