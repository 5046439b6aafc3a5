export { default as Columns } from './Columns.svelte';
export { default as Rows } from './Rows.svelte';
export { keptTexts } from './kept-text.svelte';
