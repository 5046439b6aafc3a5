export { default as Spoil } from './Spoil.svelte';
