export type { PaperOffer } from './paper-offer';
export { default as PaperList } from './PaperList.svelte';
