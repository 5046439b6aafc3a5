export { default as ChoiceField } from './ChoiceField.svelte';
export { default as EntryField } from './EntryField.svelte';
export { default as NumberField } from './NumberField.svelte';
export { lengthStored, showStored, storeLength } from './length-text';
export { showNumber } from './number-text';
export { Draft } from './draft.svelte';
export { isSolved, solvedAt } from './solved';
