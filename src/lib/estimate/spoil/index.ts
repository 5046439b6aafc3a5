export { isAllAgain, NO_SPOIL, saidFor, spoilOf } from './spoil';
