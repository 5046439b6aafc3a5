export { type Delimiter, writeCsv } from './csv';
export { type ListColumn, MEANINGS } from './headings';
export { type PartsList, readPartsList, withoutRows } from './parts-list';
export type { RowVerdict } from './row';
export { type Chosen, SEPARATORS } from './setting';
export { tableText } from './table-text';
export { writePartsCsv } from './write';
