/** What goes beside a plan and is wanted later than the form: together, so that one file of it comes for all. */
export { Comparison } from './compare.mjs';
export { asked, ToOrder } from './to-order.mjs';
