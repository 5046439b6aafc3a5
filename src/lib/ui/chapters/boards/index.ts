export { cutWords } from './cut-words';
