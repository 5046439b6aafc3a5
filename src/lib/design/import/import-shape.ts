import type { OutlineShape } from '../../job';
import type { Ruler } from '../../measure';
import type { Drawn, Undrawn } from '../shape';
import { readDxf } from './dxf';
import { FINE_MM, type Fineness } from './drawing-file';
import { finishShape, type Stated } from './finish';
import { readPasted } from './pasted';
import { readSvg } from './svg';
import { tracedShape } from './photo';

export type Imported = Extract<OutlineShape, { kind: 'svg' | 'dxf' | 'pasted' | 'traced' }>;

/** CSS Values and Units: 96 px, 72 pt to the inch. */
const UNIT_MM = { mm: 1, cm: 10, m: 1000, in: 25.4, pt: 25.4 / 72, px: 25.4 / 96 } as const;

/**
 * The outline in a drawing, a list or a picture. Never throws on what a person gives; nothing in it
 * is run or fetched. What is to be said of it is said on the ruler.
 */
export function importShape(shape: Imported, ruler: Ruler): Drawn | Undrawn {
	switch (shape.kind) {
		case 'svg': {
			const stated = statedOf(shape, ruler);
			return finishShape(readSvg(shape.text, finenessOf(stated)), stated);
		}
		case 'dxf': {
			const stated = statedOf(shape, ruler);
			return finishShape(readDxf(shape.text, shape.layer, finenessOf(stated), ruler), stated);
		}
		case 'pasted':
			return finishShape(readPasted(shape.text, shape.decimal), statedOf(shape, ruler));
		case 'traced':
			return tracedShape(shape, ruler);
	}
}

/** Of a drawing whose unit nobody knows nothing is made, however finely it is looked at. */
function finenessOf({ unit, scale }: Stated): Fineness {
	return (says) => FINE_MM / ((unit ?? says)?.mm ?? 1) / scale;
}

function statedOf(s: Exclude<Imported, { kind: 'traced' }>, ruler: Ruler): Stated {
	return {
		unit: s.unit === 'file' ? null : { mm: UNIT_MM[s.unit], name: s.unit },
		scale: s.scale,
		known: s.known,
		join: s.join,
		ruler,
	};
}
