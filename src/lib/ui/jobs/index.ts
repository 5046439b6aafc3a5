export { default as JobBook } from './JobBook.svelte';
export { default as NewJob } from './NewJob.svelte';
