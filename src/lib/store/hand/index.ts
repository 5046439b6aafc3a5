export { JobInHand } from './job-in-hand';
export { type JobToOpen, openJob, rackOf, shopAtHand } from './open-job';
export { recordOfJob } from './record-of-job';
export { writeThrown } from './thrown';
