export type { Caution, CautionPage } from './caution';
export { cautionsFor } from './cautions';
export { LIFT_SOURCE } from './rules';
