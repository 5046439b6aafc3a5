import tables from '../../../../shared/tables/label-sheets.json';

/** One kind of label sheet, millimetres. */
export interface LabelSheet {
	readonly id: string;
	readonly paper: 'a4' | 'letter';
	readonly columns: number;
	readonly rows: number;
	readonly width: number;
	readonly height: number;
	readonly left: number;
	readonly top: number;
	readonly pitchX: number;
	readonly pitchY: number;
}

export const LABEL_SHEETS = tables.sheets as readonly LabelSheet[];
