export { foundJobs, type JobOrder, jobWords } from './found';
export { default as JobFinder } from './JobFinder.svelte';
