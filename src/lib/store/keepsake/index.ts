export { throwAway } from './trash';
