export { keepPicture, pictureOf } from './kept';
export { default as Picture } from './Picture.svelte';
export { type PictureLine, pictureOfJob, picturesOf } from './pictures';
