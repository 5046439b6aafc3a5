export { cautionPages } from './caution-pages';
export { costPages } from './cost-pages';
export { counterPages } from './counter-pages';
export { cuttingListCsv, offcutsCsv, orderCsv, partsCsv, supplierCsvs } from './csv-files';
export { labelPages } from './label-pages';
export { fetchPages, orderGroups, orderPages } from './order-pages';
export { ownerName, partsPages } from './parts-pages';
export { quotePages } from './quote-pages';
export { summaryPages } from './summary-pages';
