export { pictureOf } from './kept';
export { default as Picture } from './Picture.svelte';
export { type PictureLine, picturesOf } from './pictures';
