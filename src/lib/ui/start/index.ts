export { default as StartPage } from './StartPage.svelte';
