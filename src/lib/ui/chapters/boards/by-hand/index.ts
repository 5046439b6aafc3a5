export { default as HandField } from './HandField.svelte';
export { default as HandLayer } from './HandLayer.svelte';
export { default as HandPanel } from './HandPanel.svelte';
export { HandWork } from './hand-work.svelte';
