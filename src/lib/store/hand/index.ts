export type { JobInHand } from './job-in-hand';
export type { JobToOpen } from './open-job';
