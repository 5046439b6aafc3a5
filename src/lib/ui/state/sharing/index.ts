export { joinByLink, secretIn, usualDeviceName } from './join';
export { liveOf } from './live.svelte';
export { SharedView } from './shared-view.svelte';
