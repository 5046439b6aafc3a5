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
	planJobsTogether,
	priceOptions,
	startPlanner,
	startPrinter,
	type TogetherAsked,
} from './worker-client';
