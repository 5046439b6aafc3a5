export { default as BenchView } from './BenchView.svelte';
