import type { Shape } from '../../job/panel-outline';
import { refused, type Drawn, type Undrawn } from '../panel/drawn';

export type Imported = Extract<Shape, { kind: 'svg' | 'dxf' | 'pasted' | 'traced' }>;

export function importShape(shape: Imported): Drawn | Undrawn {
	return refused(
		`An outline of kind '${shape.kind}' cannot be read yet.`,
		'Give the outline by numbers.',
	);
}
