/**
 * The standards a plan may go by, as the service tells them at the start.
 *
 * @typedef {object} ListedMethod
 * @property {string} id
 * @property {string} words What it is called where one is chosen.
 * @property {'exposure' | 'terrain'} ground The field of a plan that names its ground.
 * @property {boolean} asksGround Its wind goes by the ground.
 * @property {boolean} asksYears A plan may name the return period of its speed.
 * @property {boolean} asksIsolated A hill counts only where it is isolated.
 * @property {boolean} ofSites A site can be designed by it; else it is for ratings only.
 * @property {'us' | 'si'} [offeredTo] Units of new plans that it is offered to.
 */

/** Choices for a site, and for a rating; filled before anything is painted. @type {[string, string][]} */
export const SITE_METHODS = [];
/** @type {[string, string][]} */
export const RATING_METHODS = [];
/** @type {Map<string, ListedMethod>} */
const byId = new Map();

/** Takes over what the service tells. @param {readonly ListedMethod[]} listed */
export function listMethods(listed) {
  const choices = (/** @type {readonly ListedMethod[]} */ of) =>
    of.map(({ id, words }) => /** @type {[string, string]} */ ([id, words]));
  SITE_METHODS.splice(0, Infinity, ...choices(listed.filter(({ ofSites }) => ofSites)));
  RATING_METHODS.splice(0, Infinity, ...choices(listed));
  for (const each of listed) byId.set(each.id, each);
}

/** The field of a plan that names the ground of a method; of none chosen yet, the exposure. @param {string} method */
export const groundField = (method) => byId.get(method)?.ground ?? 'exposure';

/** Whether the wind by a method goes by the ground. @param {string} method */
export const asksGround = (method) => byId.get(method)?.asksGround ?? true;

/** The standard that a new plan starts with, where one is offered. @param {'us' | 'si'} units */
export const offeredMethod = (units) => [...byId.values()].find(({ offeredTo }) => offeredTo === units)?.id;

/** Whether a plan by a method may name the return period of its speed. @param {string} method */
export const asksYears = (method) => byId.get(method)?.asksYears ?? false;

/** Whether a hill must be isolated to count by a method. @param {string} method */
export const asksIsolated = (method) => byId.get(method)?.asksIsolated ?? false;
