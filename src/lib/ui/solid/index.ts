export { default as SolidStage } from './SolidStage.svelte';
