import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { QUESTION_WORDS, REASON_WORDS } from '../../src/words/index.ts';
import fc from '../fast-check.ts';
import { projectFiles } from '../house/source-files.ts';
import { runningApp } from '../http/running-app.ts';
import { anyPlan, checkInputOf } from '../margins/any-plan.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { FORBIDDEN, forbiddenIn, ownersWords } from './forbidden-patterns.ts';
import { literalsOf } from './literal-reader.ts';
import {
  additionsTexts,
  checkTexts,
  drawingTexts,
  EVERY_CAUTION,
  EVERY_CHECK,
  EVERY_QUESTION,
  textOfMarkup,
  wholeAnswer,
  worksheetText,
} from './readers-texts.ts';
import { saidIn } from './sentence-reader.ts';

/** Names of styles, which nobody reads. */
const STYLES = /\bclass="[^"]*"|^ledger fold( wide)?$/g;

const findings = (texts: readonly string[], owned: readonly string[] = []) => [
  ...new Set(texts.flatMap((text) => forbiddenIn(text, owned))),
];

describe('the forbidden patterns', () => {
  it.each([
    'The area is of unsaid kind.',
    'It falls well.',
    'The mast is not shown.',
    'Thin: it takes',
    'use 0.93',
    'We do not assume one.',
    'Ask the maker.',
    'in your wind',
    'hang less',
    'the rating speaks for it',
    'most in shear',
    'to mend',
    'shear at the foot',
    'it is safe',
  ])('are found: %s', (text) => {
    expect(forbiddenIn(text).length).toBeGreaterThan(0);
  });

  it('leave out what is the owner’s', () => {
    expect(forbiddenIn('Remove the safe maker dish.', ['safe maker dish'])).toEqual([]);
    expect(FORBIDDEN).toHaveLength(13);
  });
});

describe('the reader of literals', () => {
  it('finds texts in quotes and templates, and neither comments nor expressions', () => {
    const template = ['`x $', "{f('three')} y`"].join('');
    const program = `const a = 'one'; // 'two'\nconst b = ${template}; /* 'four' */ const c = /'five'/;\n`;
    expect(literalsOf(program).map(({ text }) => text)).toEqual(['one', 'three', 'x ‹› y']);
  });
});

/** Texts of more than one word: a single one is an identifier. */
function proseOf(folder: string): readonly { place: string; text: string }[] {
  return projectFiles(folder, /\.(ts|mjs)$/).flatMap(({ path, text }) =>
    literalsOf(text).flatMap((literal) => {
      const prose = literal.text.replaceAll(STYLES, '');
      return /\S\s+\S/.test(prose) ? [{ place: `${path}:${literal.line}`, text: prose }] : [];
    }),
  );
}

describe('no text in the program', () => {
  it.each('areas drawing foundation http margins methods page plan structure wind words worksheet'.split(' '))(
    'says a forbidden word: %s',
    (room) => {
      const prose = proseOf(`src/${room}`);
      expect(prose.length).toBeGreaterThan(0);
      expect(prose.flatMap(({ place, text }) => forbiddenIn(text).map((found) => `${place}: ${found}`))).toEqual([]);
    },
  );
});

describe.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
  'no answer says a forbidden word: %s',
  (_, plan) => {
    const owned = ownersWords(plan);
    const { assessment, text, document } = wholeAnswer(plan);

    it('as text and as JSON', () => {
      expect(findings([text, ...saidIn(document).map((said) => said.text)], owned)).toEqual([]);
    });

    it('as a worksheet', () => {
      expect(findings([worksheetText(plan)], owned)).toEqual([]);
    });

    it('on its drawings', () => {
      expect(findings(drawingTexts(assessment), owned)).toEqual([]);
    });
  },
);

describe('no other answer says a forbidden word', () => {
  it('to any plan', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const { text, document } = wholeAnswer(plan);
        expect(findings([text, ...saidIn(document).map((said) => said.text)], ownersWords(plan))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it('to proposals', () => {
    const example = new URL('../../openapi/examples/additions.another-antenna.json', import.meta.url);
    const request = JSON.parse(readFileSync(example, 'utf8')) as unknown;
    const { texts, document } = additionsTexts(request);
    expect(findings([...texts, ...saidIn(document).map(({ text }) => text)], ownersWords(request))).toEqual([]);
  });
});

describe('no record of words says a forbidden one', () => {
  it('of checks', () => {
    expect(findings(EVERY_CHECK.flatMap(checkTexts))).toEqual([]);
  });

  it('of cautions', () => {
    expect(findings(EVERY_CAUTION)).toEqual([]);
  });

  it('of reasons and questions', () => {
    const input = checkInputOf(demoPlan('ten-numbers'));
    const asked = EVERY_QUESTION.flatMap((question) => {
      const words = QUESTION_WORDS[question.question];
      return [
        words.ask(question, input),
        words.answer(question.assumed, 'us'),
        words.answered(question.assumed, question, 'us'),
      ];
    });
    expect(findings([...asked, ...Object.values(REASON_WORDS)])).toEqual([]);
  });
});

type Tree = Record<string, unknown>;
const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null;

const WRONGS = [undefined, null, 'gibberish', -1, 0, 1e9, [], {}, '12 bananas', '3,5,7'];

/** What is said of a plan damaged at each of its places in every way a hand may do it. */
function saidOfDamaged(plan: Tree): ReadonlySet<string> {
  const whole = structuredClone(plan);
  const said = new Set<string>();
  const read = () => {
    const reading = readPlan(whole);
    for (const { says } of reading.ok ? reading.entryWarnings : reading.faults) said.add(says);
  };
  const visit = (at: Tree) => {
    for (const key of Object.keys(at)) {
      const right = at[key];
      for (const wrong of WRONGS) {
        at[key] = wrong;
        read();
      }
      at[key] = right;
      if (isTree(right)) visit(right);
    }
    if (Array.isArray(at)) return;
    at['unknwon'] = 1;
    read();
    delete at['unknwon'];
  };
  visit(whole);
  return said;
}

describe('no fault says a forbidden word', () => {
  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('in what is damaged of %s', (_, plan) => {
    const said = saidOfDamaged(plan);
    expect(said.size).toBeGreaterThan(30);
    expect(findings([...said], ownersWords(plan))).toEqual([]);
  });
});

/** Every description and summary of a contract. */
function describedIn(value: unknown, key = ''): readonly string[] {
  if (typeof value === 'string') return key === 'description' || key === 'summary' ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => describedIn(each));
  if (!isTree(value)) return [];
  return Object.entries(value).flatMap(([name, each]) => describedIn(each, name));
}

describe('what the service says of itself', () => {
  const running = runningApp();

  it('has no forbidden word in the contract', async () => {
    const { body } = await running.request().get('/openapi.json');
    const described = describedIn(body);
    expect(described.length).toBeGreaterThan(200);
    expect(findings(described)).toEqual([]);
  });

  it.each(['/', '/docs', '/nowhere'])('has no forbidden word on the page at %s', async (address) => {
    const { text } = await running.request().get(address).set('accept', 'text/html');
    const shown = textOfMarkup(text);
    expect(shown.length).toBeGreaterThan(100);
    expect(findings([shown])).toEqual([]);
  });

  it('has no forbidden word in its metrics', async () => {
    const { text } = await running.request().get('/metrics');
    expect(findings(text.split('\n').filter((line) => line.startsWith('# HELP')))).toEqual([]);
  });
});
