export { default as RackOwner } from './RackOwner.svelte';
export { RACK } from './rack-lists';
