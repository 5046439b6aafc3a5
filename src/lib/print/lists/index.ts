export { cautionPages } from './caution-pages';
export { cuttingListCsv, offcutsCsv, orderCsv, partsCsv } from './csv-files';
export { labelPages } from './label-pages';
export { costPages, orderPages, quotePages } from './money-pages';
export { ownerName, partsPages } from './parts-pages';
export { summaryPages } from './summary-pages';
