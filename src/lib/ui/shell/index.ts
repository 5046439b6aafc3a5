export { default as Broken } from './Broken.svelte';
export { default as Notices } from './Notices.svelte';
export { default as TitleBlock } from './TitleBlock.svelte';
export { default as TopBar } from './TopBar.svelte';
export { liveFigures } from './figures';
export { NewVersion } from './new-version.svelte';
export { partsOfPage } from './page-parts';
export { showPull } from './pull';
export { askedByKey } from './keys';
