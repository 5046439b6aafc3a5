import type { Saving } from '../layout/savings';
import type { Plan, Progress } from '../plan';

/** What the page asks of the worker that plans. */
export interface Planner {
	/** The plan; null when a newer request overtook this one. */
	plan(file: unknown, ask: Ask, tell: (progress: Progress) => void): Promise<Plan | null>;
	/** What would save a sheet; null when a newer request overtook this one. */
	savings(plan: Plan, n: number): Promise<readonly Saving[] | null>;
	/** Stop looking: the request under way answers with the best it has. */
	stop(): Promise<void> | void;
}

/** What it asks of the one that prints. */
export interface Printer {
	/** Papers of a plan. Rejects with a sentence when a face cannot be fetched. */
	paper(kind: PaperKind, plan: Plan, faces: FaceUrls): Promise<readonly Paper[]>;
}

export interface Ask {
	/** Which request this is; a higher one overtakes it. */
	readonly n: number;
	/** Work units; 0 for the usual effort. */
	readonly effort: number;
}

export type PaperKind =
	'print-pack' | 'labels' | 'templates' | 'order' | 'cutting-list' | 'layouts';

/** A file ready to be kept. */
export interface Paper {
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
