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
export type { HandPlace } from './by-hand';
export { lengthBetween, USUAL_CURRENCY } from './fields';
export {
	clothName,
	clothOf,
	foamMinutes,
	materialName,
	materialOf,
	reelOf,
	rollOf,
	rollsOf,
	sawOf,
	sheetOf,
} from './in-use';
export { type Job, job, type JobFile } from './job';
export { schemaText } from './json-schema';
export { type LoosePart, loosePart } from './loose-part';
export { type ListOfMarks, listOfMarks, mayName } from './marks';
export { type JobOption, withOption } from './options';
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
	type ListColumn,
	PARTS_WORDS,
	type PartsChosen,
	type PartsList,
	readPartsList,
	type RowVerdict,
	writePartsCsv,
} from './parts-list';
export {
	bareJpeg,
	bytesOfText,
	joinedBytes,
	LONGEST_SIDE,
	MOST_BYTES,
	MOST_PHOTOGRAPHS,
	type Photograph,
	pictureFrom,
	picturesNamed,
	readJpeg,
	sha256,
	takeOutPictures,
	textOfBytes,
	withPictures,
} from './photographs';
export type { PinnedLayout } from './pinned';
export {
	goodsOf,
	PRICE_WORDS,
	type PricesChosen,
	type PriceVerdict,
	readPriceList,
	takePrices,
	writePricesCsv,
} from './price-list';
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
export { packsDone, type PulledCloth, type TookMaterial, type TookTime } from './booked';
export { currencyOf, rulerOf } from './ruler-of';
export type { Run } from './run';
export { BENCH_PAPERS, LABEL_SHEETS, type LabelSheet, letterPaper, shop } from './shop';
export {
	buyCounted,
	buyLength,
	type Cloth,
	dayNumber,
	eachStep,
	isPatterned,
	type Material,
	type MoreBecause,
	napOnRoll,
	priceOfLength,
	type Roll,
	STARTING_STOCK,
	stepsFor,
	stock,
	type StockSheet,
	type Sundry,
	withStartingStock,
} from './stock';
export {
	type CsvRow,
	type Delimiter,
	SEPARATORS,
	type Setting,
	tableText,
	withoutRows,
	writeCsv,
} from './table';
export { upgrade, VERSION } from './upgrades';
export { type Note, notes, z } from './zod';
