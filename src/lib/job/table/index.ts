export { type CsvRow, type Delimiter, unguarded, writeCsv } from './csv';
export type { ColumnAs, Vocabulary } from './headings';
export { type Chosen, SEPARATORS, type Setting } from './setting';
export { brokenRow, readTable, withoutRows } from './table';
export { tableText } from './table-text';
