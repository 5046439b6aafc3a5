export { leaveWords, takeWords } from './last-words';
export { OtherWindows } from './other-windows.svelte';
export { Saver } from './saver.svelte';
