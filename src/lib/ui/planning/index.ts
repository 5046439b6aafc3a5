export { isBetter } from './best-plan';
export type {
	Ask,
	FaceUrls,
	SearchAsk,
	Planner,
	PlanningWorker,
	Printer,
	ReadyFile,
} from './planner';
export { startPlanner, startPrinter } from './worker-client';
