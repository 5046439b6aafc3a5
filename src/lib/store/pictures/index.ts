export { makesPicture } from './picture-document';
