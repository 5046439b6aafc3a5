/** 0 in place of a figure that is no number or without end, for what is shown. */
export const finite = (n: number): number => (Number.isFinite(n) ? n : 0);
