import { field, noted, z } from '../zod';
import { DECIMALS, distanceField, size } from '../fields';
import { UNITS } from '../../measure';

/* Outlines out of a drawing that was made elsewhere. */

const drawingUnit = z.enum(['file', 'mm', 'cm', 'm', 'in', 'pt', 'px']);

/** A length the person has measured on the thing itself, to catch a wrong unit or scale. */
export const known = z
	.strictObject({
		of: field(z.enum(['length', 'width', 'edge']), {
			label: 'Measured',
			options: { length: 'overall length', width: 'overall height' },
			help: 'Overall length, overall height or one edge',
		}),
		edge: field(z.number().int().min(1).max(5000).default(1), {
			label: 'Edge number',
			help: 'Number of that edge',
		}),
		is: field(size, { label: 'Tape says', help: 'What the tape says' }),
	})
	.nullable()
	.default(null);

const imported = {
	unit: field(drawingUnit, {
		label: 'Unit',
		options: {
			...UNITS,
			file: 'as the file says',
			m: 'metres',
			pt: 'points (1/72 in)',
			px: 'pixels (1/96 in)',
		},
		help: 'Unit the drawing is in; "as the file says" asks where the file does not say',
	}),
	scale: field(z.number().min(1e-4).max(1e4).default(1), {
		label: 'Times this',
		help: '10 for a drawing made at 1 to 10',
	}),
	known: field(known, {
		label: 'Known length',
		help: 'One known length to check the drawing against',
	}),
	join: field(distanceField.prefault(0.2), {
		label: 'Join ends nearer than',
		help: 'Loose ends nearer than this are joined',
	}),
};
/** Longer than a drawing of 100,000 entities; what is longer is no outline. */
const drawingText = field(z.string().min(1).max(40_000_000), { label: 'Drawing', edit: 'note' });

export const svg = z.strictObject({
	kind: z.literal('svg'),
	text: drawingText,
	...imported,
});
export const dxf = z.strictObject({
	kind: z.literal('dxf'),
	text: drawingText,
	layer: field(z.string().max(255).default(''), {
		label: 'Drawing layer',
		help: 'Only this drawing layer; empty for all',
	}),
	...imported,
});
export const pasted = z.strictObject({
	kind: z.literal('pasted'),
	text: field(z.string().min(1).max(400_000), {
		label: 'One corner a line',
		edit: 'note',
		help: 'x and y',
	}),
	decimal: field(z.enum(['.', ',']).default('.'), {
		label: 'Decimal sign',
		options: DECIMALS,
		help: 'Decimal sign',
	}),
	...imported,
});

export const DRAWINGS = { svg: 'SVG drawing', dxf: 'DXF drawing', pasted: 'pasted corners' };

/** An outline out of a file or a list, without any photograph. */
export const drawing = noted(z.discriminatedUnion('kind', [svg, dxf, pasted]), {
	options: DRAWINGS,
});

export type OutlineDrawing = z.output<typeof drawing>;
