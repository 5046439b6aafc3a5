export { cautionPages } from './caution-pages';
export { costPages } from './cost-pages';
export { cuttingListCsv, offcutsCsv, orderCsv, partsCsv } from './csv-files';
export { labelPages } from './label-pages';
export { fetchPages, orderPages } from './order-pages';
export { ownerName, partsPages } from './parts-pages';
export { quotePages } from './quote-pages';
export { summaryPages } from './summary-pages';
