export { PairTables, TOUCHING } from './pair-tables';
