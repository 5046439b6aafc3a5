export { labelPages } from './label-pages';
