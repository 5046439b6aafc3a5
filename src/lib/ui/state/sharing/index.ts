export { joinByLink, secretIn, usualDeviceName } from './join';
export { SharedView } from './shared-view.svelte';
