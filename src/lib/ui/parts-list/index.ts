export { default as PartsImport } from './PartsImport.svelte';
