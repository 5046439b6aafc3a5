export { type Carpeting, wrapAll, wrapShop } from './cloth-blanks';
export { layCloth } from './rolls';
