export { layCloths } from './all-cloths';
export { type Carpeting, chooseWays } from './choose-ways';
