export { default as JobList } from './JobList.svelte';
export { default as NewJob } from './NewJob.svelte';
