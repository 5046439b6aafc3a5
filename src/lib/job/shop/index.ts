export { LABEL_SHEETS, type LabelSheet } from './label-sheets';
export { BENCH_PAPERS, letterPaper } from './papers';
export { CURRENCY, type Saw, shop, shopIn } from './shop';
