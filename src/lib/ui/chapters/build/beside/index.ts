export { boxLines, boxSentence } from './box-words';
export { BOX_GROUPS, PANEL_GROUPS } from './field-groups';
export { default as Groups } from './Groups.svelte';
export { panelLines, panelSentence } from './panel-words';
export { default as VolumeBar } from './VolumeBar.svelte';
export { default as Workplace } from './Workplace.svelte';
