export { goodsOf } from './goods';
export { type PricesChosen, readPriceList } from './price-list';
export type { PriceVerdict } from './price-row';
export { PRICE_WORDS } from './price-words';
export { takePrices } from './take-prices';
export { writePricesCsv } from './write-prices';
