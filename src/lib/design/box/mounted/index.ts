export { drillBolts, sayBehindBolts } from './bolts';
export { drillScrews } from './screws';
export { cutFor, type Framed, framedName, type Seated } from './framed';
