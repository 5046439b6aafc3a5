export type { Caution, CautionPage } from './caution';
export { cautionsFor } from './cautions';
