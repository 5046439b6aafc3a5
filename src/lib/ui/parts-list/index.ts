export { kept } from './kept-list.svelte';
export { default as PartsImport } from './PartsImport.svelte';
