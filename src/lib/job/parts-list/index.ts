export { type PartsChosen, type PartsList, readPartsList } from './parts-list';
export { type ListColumn, PARTS_WORDS } from './parts-words';
export type { RowVerdict } from './row';
export { writePartsCsv } from './write';
