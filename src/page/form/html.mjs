import htm from 'htm';
import { h } from 'preact';

/** Markup as a tagged template. @type {(strings: TemplateStringsArray, ...values: any[]) => any} */
export const html = /** @type {any} */ (htm).bind(h);
