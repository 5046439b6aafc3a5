export { default as Arrived } from './Arrived.svelte';
export { default as HeldSheets } from './HeldSheets.svelte';
export { default as PriceImport } from './PriceImport.svelte';
export { default as RackOwner } from './RackOwner.svelte';
export { default as StartingList } from './StartingList.svelte';
export { RACK } from './rack-lists';
