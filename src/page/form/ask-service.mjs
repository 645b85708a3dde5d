/** Asks the service about the plan as it stands, after each change, and takes its answer or its faults in. */
import { batch, effect, signal, untracked } from '@preact/signals';
import { documentOf, isBlank, valueAt } from './draft.mjs';
import { countAsked, pauseBefore } from './pace.mjs';
import { questionAt } from './questions.mjs';
import { stillTold } from './still-told.mjs';
import * as store from './store.mjs';

/** Waiting longer than this is said. */
const SLOW = 200;

/** Drawings the answer is asked to bring along; more once their fold is opened. */
export const drawingsWanted = signal(/** @type {readonly string[]} */ (['ladder', 'elevation']));

/** Faults of a thing that is still being told: it is left out, and said so, until it is whole. */
const STILL_BEING_TOLD = new Set([
  'missing',
  'one-of',
  'height-or-above',
  'shape-field-missing',
  'kind-field-missing',
  'span-missing',
  'shape-missing',
  'too-few',
]);
/** Things that can be left out whole. */
const WHOLE =
  /^\/(loads|cables|ratings)\/\d+|^\/(site\/(hill|ice|climate|distances)|tower\/(hinge\/raisedBy|hinge\/counterpoise|hinge|foundation|supportedAt\/\d+)|mast|rotator)(?=\/|$)/;

/** @param {string} pointer */
const fromFragment = (pointer) => {
  const text = pointer.replace(/^#/, '');
  try {
    return decodeURI(text);
  } catch {
    return text;
  }
};

/** @type {AbortController | undefined} */
let running;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let timer;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let again;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let slow;

/**
 * @typedef {{ pointer?: string, code?: string, given?: unknown, allowed?: string, says: string, readings?: readonly string[] }} Fault
 * @typedef {{ type?: string, title: string, detail?: string, faults?: readonly Fault[] }} Problem
 */

/**
 * What the service answers: the answer, or what is wrong.
 *
 * @template Answer
 * @param {string} path
 * @param {unknown} body
 * @param {AbortSignal} [signal]
 * @returns {Promise<{ answer: Answer } | { answer: undefined, status: number, problem: Problem, wait: number }>}
 */
export async function post(path, body, signal) {
  countAsked(performance.now());
  const response = await fetch(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: JSON.stringify(body),
    ...(signal ? { signal } : {}),
  });
  const read = await response.json();
  if (response.status === 200) return { answer: read };
  return {
    answer: undefined,
    status: response.status,
    problem: read,
    wait: Number(response.headers.get('retry-after') ?? ''),
  };
}

/** @param {string} pointer */
const isBlankAt = (pointer) => isBlank(valueAt(store.draft.value, pointer));

/** What can be said in words of our own of a fault. @param {Fault} fault @param {string} place */
function inWords(fault, place) {
  const question = questionAt(store.fieldFor(place));
  if (fault.code === 'missing' && question) {
    const what =
      question.kind === 'choice' || question.kind === 'choices'
        ? 'Choose one.'
        : question.hint
          ? `It may stand ${question.hint}.`
          : 'Give it.';
    return `${sentence(store.nameOf(store.fieldFor(place)))} is missing. ${question.hint?.startsWith('on ') ? what : question.kind.startsWith('choice') ? what : 'Give it, or leave out all of this.'}`;
  }
  if (fault.code === 'height-or-above' && isBlankAt(`${place}/height`))
    return 'Give its height: above the tower’s top, or above the ground.';
  if (fault.code === 'one-of' && fault.given === 'nothing' && /^\/loads\/\d+$/.test(place))
    return 'Give its area or a force from its sheet, or say what it looks like.';
  if (fault.code === 'one-of' && /^\/ratings\/\d+$/.test(place) && isBlankAt(`${place}/area`))
    return 'Give the area it takes.';
  if (fault.code === 'one-of' && place === '/site/hill')
    return 'Give one: from the crest half-way down, or from foot to crest.';
  return fault.says;
}

/** @param {string} text */
const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/** @param {readonly Fault[]} faults @param {(pointer: string) => string} draftPlace @param {boolean} soft */
function troublesOf(faults, draftPlace, soft) {
  return faults.map((fault) => {
    const pointer = draftPlace(fromFragment(fault.pointer ?? ''));
    const { readings } = fault;
    return { pointer, code: fault.code ?? '', says: inWords(fault, pointer), soft, ...(readings && { readings }) };
  });
}

/** The whole that a fault can be left out with, or undefined where it cannot. @param {Fault} fault */
function wholeOf(fault) {
  if (!STILL_BEING_TOLD.has(fault.code ?? '')) return undefined;
  return WHOLE.exec(fromFragment(fault.pointer ?? ''))?.[0];
}

/** Where the service now stands; an answer to another plan than the present is marked as one. @param {typeof store.state.value} state */
function stand(state) {
  if (state !== 'asked') {
    clearTimeout(slow);
    slow = undefined;
  }
  batch(() => {
    store.state.value = state;
    if (store.answer.peek() === null) store.earlier.value = false;
    else if (state !== 'asked') store.earlier.value = store.answeredDraft.peek() !== store.draft.peek();
  });
}

/** From the change on, until an answer has come. */
function wait() {
  if (store.state.peek() === 'rest' || store.state.peek() === 'locked') stand('asked');
  slow ??= setTimeout(() => {
    if (store.state.peek() === 'asked') stand('slow');
  }, SLOW);
}

async function ask() {
  running?.abort();
  const own = new AbortController();
  running = own;
  wait();
  const draft = store.draft.value;
  const lacking = untracked(() => store.wanted.value).length > 0;
  try {
    const wanting = stillTold(draft);
    // What is still being told is looked at once for what cannot be read in it, and then left out.
    /** @type {string[]} */
    let leftOut = [];
    /** @type {import('./store.mjs').Trouble[]} */
    let soft = [];
    let looking = wanting.length > 0 || lacking;
    for (let attempt = 0; ; attempt += 1) {
      const { document, draftPlace } = documentOf(draft, leftOut);
      const names = untracked(() => drawingsWanted.value).join(',');
      /** @type {Awaited<ReturnType<typeof post<import('./store.mjs').Answer>>>} */
      const reply = await post(`v1/checks?as=json&drawings=${names}`, document, own.signal);
      if (own.signal.aborted) return;
      if (reply.answer && !looking) {
        takeAnswer(reply.answer, draft, document, draftPlace, soft);
        return;
      }
      const { status, problem, wait: pause } = reply.answer ? READABLE : reply;
      if (status === 401) {
        // The browser itself asks for the key at each answer like this; it is not to ask at each letter typed.
        batch(() => {
          store.troubles.value = soft;
          stand('locked');
        });
        return;
      }
      if (status === 429 || status === 503) {
        stand('busy');
        again = setTimeout(askSoon, Math.min(Math.max(pause || 1, 1), 60) * 1000);
        return;
      }
      const faults =
        reply.answer || problem.faults?.length
          ? (problem.faults ?? [])
          : [{ pointer: '', code: problem.type?.split('/').at(-1) ?? '', says: problem.detail ?? problem.title }];
      if (looking) {
        looking = false;
        const unreadable = faults.filter(({ code }) => !STILL_BEING_TOLD.has(code ?? ''));
        if (!lacking) {
          leftOut = wanting.map(({ whole }) => whole);
          soft = wanting
            .filter(({ says }) => says !== '')
            .map(({ pointer, says }) => ({ pointer, code: 'missing', says, soft: true }));
          if (unreadable.length === 0) continue;
        }
        batch(() => {
          store.troubles.value = [...soft, ...troublesOf(unreadable, draftPlace, false)];
          stand('rest');
        });
        return;
      }
      /** @type {(string | undefined)[]} */
      const wholes = faults.map(wholeOf);
      if (
        attempt < 3 &&
        wholes.some((whole) => whole !== undefined) &&
        wholes.every((whole, index) => whole !== undefined || beside(faults[index], wholes))
      ) {
        const places = wholes.filter((whole) => whole !== undefined).map(draftPlace);
        soft = [...soft, ...troublesOf(faults, draftPlace, true)];
        leftOut = [...new Set([...leftOut, ...places])];
        continue;
      }
      batch(() => {
        store.troubles.value = [...soft, ...troublesOf(faults, draftPlace, false)];
        stand('rest');
      });
      return;
    }
  } catch (error) {
    if (own.signal.aborted) return;
    stand('unreachable');
    again = setTimeout(askSoon, 3000);
    if (!(error instanceof TypeError) && !(error instanceof SyntaxError)) throw error;
  }
}

/** What a plan has that could be read: no faults. */
const READABLE = { status: 200, problem: /** @type {Problem} */ ({ title: '', faults: [] }), wait: 0 };

/** A fault of a thing that is to be left out for another fault. @param {Fault | undefined} fault @param {readonly (string | undefined)[]} wholes */
function beside(fault, wholes) {
  const at = fromFragment(fault?.pointer ?? '');
  return (
    STILL_BEING_TOLD.has(fault?.code ?? '') && wholes.some((whole) => whole !== undefined && at.startsWith(`${whole}/`))
  );
}

/** @param {import('./store.mjs').Answer} answer @param {Record<string, unknown>} draft @param {Record<string, unknown>} document @param {(pointer: string) => string} draftPlace @param {import('./store.mjs').Trouble[]} soft */
function takeAnswer(answer, draft, document, draftPlace, soft) {
  batch(() => {
    store.placeOf.value = draftPlace;
    store.answer.value = answer;
    store.answeredDraft.value = draft;
    store.answeredPlan.value = document;
    store.troubles.value = soft;
    stand('rest');
    store.answeredAt.value = new Date().toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  });
}

/** Asks though the service wanted a key, so that the browser asks for it once more. */
export function askWithKey() {
  if (store.state.value === 'locked') ask();
}

function askSoon() {
  clearTimeout(timer);
  clearTimeout(again);
  // Only looked at: who follows changes of the plan must not follow the state, which asking changes.
  if (store.state.peek() === 'locked') {
    stand('locked');
    return;
  }
  running?.abort();
  wait();
  timer = setTimeout(ask, pauseBefore(performance.now()));
}

/** Whether anything is given that the service could look at; a standard alone says nothing of a tower. */
const holdsAnything = () =>
  Object.keys(untracked(() => store.plan.value).document).some((key) => !/^(format|units|method)$/.test(key));

/** Asks now and after every change. */
export function followChanges() {
  let first = true;
  effect(() => {
    // Read here, so that each change of them is followed.
    const lacking = store.wanted.value;
    void store.draft.value;
    void drawingsWanted.value;
    if (lacking.length > 0) store.answer.value = null;
    if (lacking.length > 0 && !holdsAnything()) {
      running?.abort();
      clearTimeout(timer);
      clearTimeout(again);
      batch(() => {
        store.troubles.value = [];
        stand(store.state.peek() === 'locked' ? 'locked' : 'rest');
      });
      return;
    }
    if (first) timer = setTimeout(ask, 0);
    else askSoon();
    first = false;
  });
  addEventListener('online', askSoon);
}
