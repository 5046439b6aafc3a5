export { default as DrawingView } from './DrawingView.svelte';
export { default as PlaceTable } from './PlaceTable.svelte';
