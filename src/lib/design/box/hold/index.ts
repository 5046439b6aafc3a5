export { placeTieDowns, type Tied, tieDownName } from './tie-downs';
