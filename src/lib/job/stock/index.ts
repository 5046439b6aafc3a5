export { buyCounted, buyLength, eachStep, type MoreBecause } from './buying';
export { isPatterned, napOnRoll } from './cloth-nap';
export { priceOfLength, stepsFor } from './roll-price';
export { STARTING_STOCK, withStartingStock } from './starting-stock';
export {
	type Cloth,
	clothThickness,
	type Material,
	type Roll,
	stock,
	stockIn,
	type StockSheet,
	type Sundry,
	type Supplier,
} from './stock';
export { dayNumber } from './supplied';
export { offNominal } from './thickness';
