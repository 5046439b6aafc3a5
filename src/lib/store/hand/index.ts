export { JobInHand } from './job-in-hand';
export { type JobToOpen, openJob, shopAtHand } from './open-job';
