export { halve, type Unhalved } from './halve';
export { withSlotsNamed } from './slots-named';
