export { isPatterned, napOnRoll } from './cloth-nap';
export { priceOfLength, stepsFor } from './roll-price';
export {
	type Cloth,
	clothThickness,
	type Material,
	type Roll,
	stock,
	stockIn,
	type StockSheet,
	type Sundry,
} from './stock';
export { offNominal } from './thickness';
