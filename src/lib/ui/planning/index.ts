export { isBetter } from './best-plan';
export type {
	Ask,
	FaceUrls,
	PagesAsked,
	Planner,
	PlanningWorker,
	Printer,
	ReadyFile,
	SearchAsk,
} from './planner';
export {
	type OptionsAsked,
	planApart,
	priceOptions,
	startPlanner,
	startPrinter,
} from './worker-client';
