export { default as DevicesView } from './DevicesView.svelte';
