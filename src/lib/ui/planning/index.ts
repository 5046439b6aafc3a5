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
	type AgainAsked,
	type OptionsAsked,
	planApart,
	planJobsTogether,
	planWaysAgain,
	priceOptions,
	startPlanner,
	startPrinter,
	type TogetherAsked,
} from './worker-client';
