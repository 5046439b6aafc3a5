import type { Ink, LineKind } from '../drawing';

/**
 * What both pens agree on: how wide each line is drawn, its dashes, and the colours of a printed
 * page.
 */
interface Stroke {
	readonly width: number; // mm
	readonly dash: readonly number[]; // mm, empty for a continuous line
}

/**
 * Two widths in the ratio 2:1 (ISO 128-2: 0.5 and 0.25 mm of the series), and a hairline for table
 * rules. Cut lines carry the wide stroke: at the saw they are what counts.
 */
export const STROKES: Readonly<Record<LineKind, Stroke>> = {
	wide: { width: 0.5, dash: [] },
	narrow: { width: 0.25, dash: [] },
	dashed: { width: 0.25, dash: [2, 1] },
	chain: { width: 0.25, dash: [6, 1, 0.6, 1] },
	phantom: { width: 0.25, dash: [6, 1, 0.6, 1, 0.6, 1] },
	cut: { width: 0.5, dash: [] },
	hair: { width: 0.13, dash: [] },
};

/**
 * Colours on white paper. Ink is full black and pencil near it, so that a laser printer draws
 * lines, not dots; nothing is told by colour alone.
 */
export const PAPER: Readonly<Record<Ink, string>> = {
	ink: '#000000',
	pencil: '#3d4146',
	rule: '#b3aa97',
	chalk: '#0b5a9c',
	warn: '#a8330c',
	wood: '#7d5a2e',
	cloth: '#6d3a5c',
	sheet: '#ffffff',
	sunk: '#f3f0e9',
	'chalk-wash': '#e2edf6',
	'warn-wash': '#fbeae3',
};

/** Width of the band of paper round the letters of a text with a halo, as a share of its size. */
export const HALO = 0.34;
