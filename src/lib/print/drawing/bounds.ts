/** An upright rectangle on paper, millimetres, y down. */
export interface Bounds {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}
