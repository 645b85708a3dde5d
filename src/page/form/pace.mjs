/** How often the service is asked: at once as a rule, and less often by who types without end. */

/** After the last key; short enough that the answer is there within 200 ms [ms]. */
const PAUSE = 60;
/** Below what a service allows one caller by default, which is 300 a minute. */
const AT_MOST = 40;
const WITHIN = 12_000;

/** @type {number[]} */
let asked = [];

/** Counts a request. @param {number} now [ms] */
export function countAsked(now) {
  asked = [...asked, now].slice(-AT_MOST);
}

/** How long to wait before the next request [ms]. @param {number} now [ms] */
export function pauseBefore(now) {
  const first = asked.length < AT_MOST ? undefined : asked[0];
  return Math.max(PAUSE, first === undefined ? 0 : first + WITHIN - now);
}
