import { text } from './fields.ts';

/** Units of figures that depend on the trait. */
export const UNIT = 'the unit of the trait';
export const WORKING = 'working scale: logarithms of yield, fruits and days, else the unit of the trait';
export const variety = text('Id of the variety');
