export { default as Revisions } from './Revisions.svelte';
