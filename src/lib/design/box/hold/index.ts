export { type Tied, tieDown, tieDownName } from './tie-downs';
