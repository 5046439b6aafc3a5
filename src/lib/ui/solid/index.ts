export { meshOf } from './mesh';
export { solidOfBox, solidOfPanel, type Solids } from './solid-of';
export { default as SolidView } from './SolidView.svelte';
