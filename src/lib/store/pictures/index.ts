export { docOfPicture, hashIn, makesPicture } from './picture-document';
