export { qsOf } from './data';
export { responsesOf } from './response';
