export { LABEL_SHEETS, type LabelSheet } from './label-sheets';
export { CURRENCY, type Saw, shop, shopIn } from './shop';
