import type { BoxPlan } from './design/box/box-plan';
import type { Need } from './design/need';
import type { PanelPlan } from './design/panel/panel-plan';
import type { Part } from './design/part';
import type { Caution } from './cautions/caution';
import type { Order, Quote } from './estimate/types';
import type { Job } from './job/job';
import type { Problem } from './job/problem';
import type { BoardLayouts, ClothLayouts } from './layout/layouts';
import type { Blank } from './wrap/blank';

/** Everything that can be shown or printed of a job. Plain data: it crosses to and from the worker as it is. */
export interface Plan {
	readonly job: Job;
	readonly problems: readonly Problem[];
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly needs: readonly Need[];
	readonly order: Order;
	readonly quote: Quote;
	readonly cautions: readonly Caution[];
}

export interface PlanOptions {
	/** Search seed; the job's own when absent. */
	readonly seed?: number;
	/** Work units for all searches together; see nest/types Budget. */
	readonly effort?: number;
	/** Called between slices of work; resolves to false to stop looking and take the best so far. */
	readonly watch?: (progress: Progress) => Promise<boolean> | boolean;
}

export interface Progress {
	readonly stage: string; // 'boards: birch plywood 18'
	readonly done: number; // 0..1
	readonly sheets?: number;
}
