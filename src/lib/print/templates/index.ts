export { blankTemplate, partTemplate, templateLength, templateOf, templatesOf } from './pages';
