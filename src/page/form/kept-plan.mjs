/** Keeping a plan: in the browser, in a file, in a link. Nothing of it goes to the service but for an answer. */
import { documentOf } from './draft.mjs';
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

/** @param {string} place @returns {{ draft: Record<string, unknown>, unknown: string[] } | undefined} */
function keptAt(place) {
  try {
    const text = localStorage.getItem(place);
    if (text === null) return undefined;
    const read = JSON.parse(text);
    if (typeof read?.draft !== 'object' || read.draft === null || Array.isArray(read.draft)) return undefined;
    return { draft: read.draft, unknown: Array.isArray(read.unknown) ? read.unknown.map(String) : [] };
  } catch {
    return undefined;
  }
}

/** Keeps what stands now; false where the browser keeps nothing. */
export function keepInBrowser() {
  try {
    localStorage.setItem(PLACE, JSON.stringify({ draft: store.draft.value, unknown: [...store.unknown.value] }));
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

/** @param {string} text @param {string} from */
export function openText(text, from) {
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

/** A link that holds the whole plan behind its #, where no browser sends it anywhere. */
export async function linkToPlan() {
  const { document: plan } = documentOf(store.draft.value);
  const packed = new Blob([JSON.stringify(plan)]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return `${location.href.replace(/[?#].*$/, '')}#plan=${asBase64Url(await bytesOf(packed, LONGEST_FILE))}`;
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
    openText(new TextDecoder('utf-8', { fatal: true }).decode(await bytesOf(packed, LONGEST_FILE)), 'The link');
    // From here on it is this browser's own plan; a reload must not bring the link's back over it.
    history.replaceState(null, '', location.pathname + location.search);
  } catch {
    refuse('The link is damaged or was cut short: no plan could be read from it. Your entries are kept.');
  }
  return true;
}
