export { default as Card } from './Card.svelte';
export { default as Caution } from './Caution.svelte';
export { default as DropArea } from './DropArea.svelte';
export { default as Empty } from './Empty.svelte';
export { default as FigureTable } from './FigureTable.svelte';
export { default as FileButton } from './FileButton.svelte';
export { default as Guard } from './Guard.svelte';
export { default as Heading } from './Heading.svelte';
