export { blankTemplate } from './blank-template';
export { templateLength, templateOf, templatesOf } from './pages';
export { partTemplate } from './part-template';
