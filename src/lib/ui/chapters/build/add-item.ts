import { aboutAt, fresh, BOX, PANEL } from '../../entries';
import type { Desk } from '../../state';

/** Puts a new box or panel at the end of its list, of the first board on the rack. */
export function addItem(desk: Desk, list: 'boxes' | 'panels'): void {
	const form = list === 'boxes' ? BOX : PANEL;
	const stem = list === 'boxes' ? 'box' : 'panel';
	desk.insert([list], fresh(form, list, aboutAt(desk.file, [list], list)), `add ${stem}`);
}
