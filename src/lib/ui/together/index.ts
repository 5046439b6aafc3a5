export { default as JobsTogether } from './JobsTogether.svelte';
