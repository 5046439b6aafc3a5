export { PairTables, TOUCH } from './pair-tables';
