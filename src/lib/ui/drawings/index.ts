export { default as DrawingView } from './DrawingView.svelte';
export { default as PlaceTable } from './PlaceTable.svelte';
export { closeTo } from './frame';
export { default as Markup } from './Markup.svelte';
