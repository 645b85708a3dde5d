/** Keeping a plan: in the browser, in a file, in a link. Nothing of it goes to the service but for an answer. */
import { placeInNewest } from '../../words/index.mjs';
import { candidatesOf } from './candidates.mjs';
import { documentOf, draftOf } from './draft.mjs';
import * as store from './store.mjs';

const PLACE = 'gustworthy-plan';
const PLACE_BEFORE = 'gustworthy-plan-before';
const LONGEST_LINK = 100_000;
const LONGEST_FILE = 1_000_000;

/** What was kept in this browser, or undefined where nothing is, or nothing can be. */
export const keptInBrowser = () => keptAt(PLACE);

/** The plan that was kept when a link or an invented plan took its place. */
export const keptBefore = () => keptAt(PLACE_BEFORE);

/** Puts what is kept aside for a plan that comes from elsewhere. */
export function putKeptAside() {
  try {
    const text = localStorage.getItem(PLACE);
    if (text !== null) localStorage.setItem(PLACE_BEFORE, text);
  } catch {
    // A browser that keeps nothing has nothing to lose.
  }
}

/** @param {string} place @returns {{ draft: Record<string, unknown>, unknown: string[], candidates: import('./candidates.mjs').Candidates } | undefined} */
function keptAt(place) {
  try {
    const text = localStorage.getItem(place);
    if (text === null) return undefined;
    const read = JSON.parse(text);
    if (typeof read?.draft !== 'object' || read.draft === null || Array.isArray(read.draft)) return undefined;
    const unknown = Array.isArray(read.unknown) ? read.unknown.map(String) : [];
    return {
      draft: draftOf(read.draft),
      unknown: unknown.map(placeInNewest),
      candidates: candidatesOf(read.candidates),
    };
  } catch {
    return undefined;
  }
}

/** Keeps what stands now; false where the browser keeps nothing. */
export function keepInBrowser() {
  try {
    const { draft, unknown, candidates } = store;
    localStorage.setItem(
      PLACE,
      JSON.stringify({ draft: draft.value, unknown: [...unknown.value], candidates: candidates.value }),
    );
    return true;
  } catch {
    return false;
  }
}

/** The plan as a file of its own: the document alone. */
export function saveToFile() {
  const { document: plan } = documentOf(store.draft.value);
  const text = `${JSON.stringify(plan, null, 2)}\n`;
  const name =
    (typeof plan['title'] === 'string' ? plan['title'] : 'plan')
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-|-$/g, '') || 'plan';
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = `${name}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  store.notice.value = `Saved as ${link.download}.`;
}

/** @param {File} file */
export async function openFile(file) {
  if (file.size > LONGEST_FILE) return refuse(`${file.name} is larger than any plan; it was not opened.`);
  openText(await file.text(), file.name);
}

/** @param {string} text @param {string} from @param {import('./candidates.mjs').Candidates} [besides] Candidates where it brings none. */
export function openText(text, from, besides = store.candidates.value) {
  /** @type {any} */
  let read;
  try {
    read = JSON.parse(text);
  } catch {
    return refuse(
      `${from} is not JSON; a plan saved here ends in .json. It was not opened, and your entries are kept.`,
    );
  }
  const plan = read?.plan && read?.units === undefined ? read.plan : read;
  if (
    typeof plan !== 'object' ||
    plan === null ||
    Array.isArray(plan) ||
    !['units', 'method', 'site', 'tower', 'loads'].some((key) => key in plan)
  ) {
    return refuse(`${from} holds no plan: no site, tower or loads. It was not opened, and your entries are kept.`);
  }
  store.openPlan(plan, `${from} opened`);
  store.candidates.value = read.candidates === undefined ? besides : candidatesOf(read.candidates);
  if (read.proposals !== undefined)
    store.notice.value = `${from} opened without its proposals: send it to POST /v1/additions.`;
}

/** @param {string} says */
function refuse(says) {
  store.notice.value = says;
}

/** @param {Uint8Array} bytes */
function asBase64Url(bytes) {
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** @param {string} text */
function fromBase64Url(text) {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (sign) => sign.charCodeAt(0));
}

/** @param {ReadableStream<Uint8Array<ArrayBuffer>>} stream @param {number} most */
async function bytesOf(stream, most) {
  const parts = [];
  let size = 0;
  for (const reader = stream.getReader(); ; ) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new RangeError('larger than any plan');
    }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/** A link that holds the whole plan and its candidates behind its #, where no browser sends it anywhere. */
async function linkToPlan() {
  const { document: plan } = documentOf(store.draft.value);
  const candidates = store.candidates.value;
  const held = candidates.list.length > 0 ? { plan, candidates } : plan;
  const packed = new Blob([JSON.stringify(held)]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return `${location.href.replace(/[?#].*$/, '')}#plan=${asBase64Url(await bytesOf(packed, LONGEST_FILE))}`;
}

/** Puts the link where it can be pasted from. */
export async function copyLink() {
  const check = await linkToPlan();
  if (check.length > 8000) {
    const besides = store.candidates.value.list.length > 0 ? ' Its candidates are not in the file.' : '';
    store.notice.value = `This plan is too long for a link that every program keeps whole. Save it to a file and send that.${besides}`;
    return;
  }
  try {
    await navigator.clipboard.writeText(check);
    store.notice.value = 'Link copied. It holds the whole plan behind its #; nothing of it is kept by the service.';
  } catch {
    history.replaceState(null, '', check.slice(check.indexOf('#')));
    store.notice.value = 'The link stands in the address bar now: copy it from there.';
  }
}

/** Opens what the service prints of the plan, and of what goes with it, in a window of its own. @param {string} address @param {Record<string, unknown>} [besides] */
export function openPrinted(address, besides = {}) {
  const { document: plan } = documentOf(store.draft.value);
  const posted = document.createElement('form');
  posted.method = 'post';
  posted.action = address;
  posted.target = '_blank';
  for (const [name, value] of Object.entries({ plan, ...besides })) {
    const field = document.createElement('input');
    field.type = 'hidden';
    field.name = name;
    field.value = typeof value === 'string' ? value : JSON.stringify(value);
    posted.append(field);
  }
  document.body.append(posted);
  posted.submit();
  posted.remove();
}

/** Opens the plan a link brought along, if it did; says why where it cannot. @param {string} fragment */
export async function openFragment(fragment) {
  const text = /^#plan=(.*)$/s.exec(fragment)?.[1];
  if (text === undefined) return false;
  if (text.length > LONGEST_LINK) {
    refuse('The link holds more than any plan; it was not opened.');
    return true;
  }
  try {
    if (!/^[\w-]+$/.test(text)) throw new SyntaxError('not base64url');
    const packed = new Blob([fromBase64Url(text)]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
    openText(
      new TextDecoder('utf-8', { fatal: true }).decode(await bytesOf(packed, LONGEST_FILE)),
      'The link',
      candidatesOf({}),
    );
    // From here on it is this browser's own plan; a reload must not bring the link's back over it.
    history.replaceState(null, '', location.pathname + location.search);
  } catch {
    refuse('The link is damaged or was cut short: no plan could be read from it. Your entries are kept.');
  }
  return true;
}
