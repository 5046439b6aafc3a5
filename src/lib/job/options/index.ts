export { type JobOption, jobOption } from './option';
export { sentQuoteIn } from './sent';
export { withOption } from './with-option';
