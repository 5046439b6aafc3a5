export { default as Form } from './Form.svelte';
export { default as ItemTools } from './ItemTools.svelte';
export { default as ListForm } from './ListForm.svelte';
export { default as Section } from './Section.svelte';
export { default as TableList } from './TableList.svelte';
