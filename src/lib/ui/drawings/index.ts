export { default as DrawingView } from './DrawingView.svelte';
export { default as PlaceTable } from './PlaceTable.svelte';
export { default as Markup } from './Markup.svelte';
