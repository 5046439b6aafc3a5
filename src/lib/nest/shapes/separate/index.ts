export { copyOf, LooseLayout, type Lying } from './loose-layout';
export { relax } from './relax';
export { type Attempt, Separation } from './separation';
