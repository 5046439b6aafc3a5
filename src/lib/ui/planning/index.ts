export { isBetter } from './best-plan';
export type {
	Ask,
	FaceUrls,
	LookAsk,
	Planner,
	PlanningWorker,
	Printer,
	ReadyFile,
} from './planner';
export { startPlanner, startPrinter } from './worker-client';
