export { default as ChangeLine } from './ChangeLine.svelte';
export { ChangeShown } from './change-shown.svelte';
export { default as SawInPlace } from './SawInPlace.svelte';
