export { default as JobAddress } from './JobAddress.svelte';
export { jobAsked } from './job-address';
