import { moved, turnedInBox, type Outline, type Rect } from '../../geometry';
import type { Placed } from '../../nest';

/** A line in a thing's own frame, turned and moved to where the thing lies on its sheet or roll. */
export function lain(line: Outline, thing: Pick<Rect, 'length' | 'width'>, at: Placed): Outline {
	return moved(turnedInBox(line, thing, at.turn), at.x, at.y);
}
