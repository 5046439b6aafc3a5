export { BENCH_CHAPTERS, type BenchChapter } from './bench-pages';
export {
	type BoardKey,
	type Box,
	box,
	type BoxDevice,
	type BoxShape,
	type BoxSpot,
	type Brace,
	type Carpet,
	type Cleats,
	clothOnFace,
	type Dimension,
	type Divider,
	type Driver,
	type Radiator,
	type RoundVent,
	type ShapeOf,
	type SlotVent,
	type TieDown,
	type Vent,
} from './box';
export { lengthBetween, USUAL_CURRENCY } from './fields';
export {
	clothName,
	clothOf,
	materialName,
	materialOf,
	rollOf,
	rollsOf,
	sawOf,
	sheetOf,
} from './in-use';
export { type Job, job, type JobFile } from './job';
export { schemaText } from './json-schema';
export { type LoosePart, loosePart } from './loose-part';
export { type ListOfMarks, listOfMarks } from './marks';
export {
	type Cover,
	type Device,
	type EdgeChoice,
	type EdgeChoices,
	type Layer,
	type OutlineDrawing,
	type OutlineShape,
	type Panel,
	panel,
	type PanelWindow,
	type PlacedShape,
	type Ring,
	type Zone,
} from './panel';
export {
	type Chosen,
	type Delimiter,
	type ListColumn,
	MEANINGS,
	type PartsList,
	readPartsList,
	type RowVerdict,
	SEPARATORS,
	tableText,
	withoutRows,
	writeCsv,
	writePartsCsv,
} from './parts-list';
export type { PinnedLayout } from './pinned';
export {
	notesOf,
	type Path,
	pathText,
	type Places,
	placesIn,
	type Problem,
	saidOnce,
	textsIn,
	troublesOf,
	valueAt,
} from './problems';
export {
	guard,
	LARGEST_FILE,
	parseJobText,
	parseText,
	problemsOf,
	readJob,
	showHidden,
	type Unsized,
} from './reading';
export { LABEL_SHEETS, type LabelSheet, shop } from './shop';
export {
	type Cloth,
	isPatterned,
	type Material,
	napOnRoll,
	priceOfLength,
	type Roll,
	stepsFor,
	stock,
	type StockSheet,
	type Sundry,
} from './stock';
export { upgrade, VERSION } from './upgrades';
export { type Note, notes, z } from './zod';
