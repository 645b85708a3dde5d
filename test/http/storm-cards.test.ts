import { describe, expect, it } from 'vitest';
import { assess, stormCardOf } from '../../src/margins/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { sheetHtml, stormDocument, stormSheet, stormText } from '../../src/worksheet/index.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { forbiddenIn, ownersWords } from '../words/forbidden-patterns.ts';
import { textOfMarkup } from '../words/readers-texts.ts';
import { sentencesOf } from '../words/sentence-reader.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const post = (query: string, body: unknown) =>
  running
    .request()
    .post(`/v1/storm-cards${query}`)
    .send(body as object);
const plan = demoPlan('river-bluff');
const faultsOf = async (forecast: unknown) => (await post('', { plan, forecast }).expect(422)).body.faults;

describe('POST /v1/storm-cards', () => {
  it('answers a forecast, and without one gives the rows alone', async () => {
    const { body } = await post('', { plan, forecast: { speed: 75, basis: 'gust3' } }).expect(200);
    expect(body.forecast).toMatchObject({ act: 'lower-flat', gust: { value: 75, unit: 'mph' } });
    const without = await post('', { plan }).expect(200);
    expect(without.body.forecast).toBeUndefined();
    expect(without.body.rows).toEqual(body.rows);
  });

  it.each([
    ['nothing at all', { speed: 0 }, 'out-of-bounds', '#/forecast/speed'],
    ['what no storm has', { speed: 300 }, 'out-of-bounds', '#/forecast/speed'],
    ['less than nothing', { speed: -5 }, 'out-of-bounds', '#/forecast/speed'],
    ['a weight', { speed: '58 kg' }, 'unknown-unit', '#/forecast/speed'],
    ['a word', { speed: 'strong' }, 'unreadable', '#/forecast/speed'],
    ['an unknown type', { speed: 58, basis: 'gale' }, 'not-a-choice', '#/forecast/basis'],
    ['no speed', { basis: 'gust3' }, 'missing', '#/forecast/speed'],
    ['a field too many', { speed: 58, hour: 3 }, 'unknown-field', '#/forecast/hour'],
  ])('refuses a forecast of %s', async (_, forecast, code, pointer) => {
    expect(await faultsOf(forecast)).toMatchObject([{ code, pointer }]);
  });

  it('points into the plan where that is wrong', async () => {
    const { body } = await post('', { plan: { ...plan, units: 'furlongs' }, forecast: { speed: 0 } }).expect(422);
    const pointers = body.faults.map(({ pointer }: { pointer: string }) => pointer);
    expect(pointers).toContain('#/plan/units');
    expect(pointers).toContain('#/forecast/speed');
  });

  it('takes a unit in the text of the speed', async () => {
    const { body } = await post('', { plan, forecast: { speed: '100 km/h', basis: 'gust3' } }).expect(200);
    expect(body.forecast.gust.value).toBeCloseTo(100 / 1.609344, 6);
  });

  it('prints one page on either paper, and a page for a browser', async () => {
    for (const [paper, box] of [
      ['letter', '612 792'],
      ['a4', '595.27'],
    ]) {
      const { body, headers } = await post(`?as=pdf&paper=${paper}`, { plan }).responseType('blob').expect(200);
      const boxes = body.toString('latin1').match(/\/MediaBox \[0 0 [\d. ]+\]/g);
      expect(boxes).toHaveLength(1);
      expect(boxes?.[0]).toContain(box);
      expect(headers['content-disposition']).toBe('inline; filename="storm-card-heron-bluff.pdf"');
    }
    const { text } = await post('?as=html', { plan })
      .expect(200)
      .expect('content-type', /text\/html/);
    expect(text).toContain('Before a storm');
    await post('?as=json&paper=a4', { plan }).expect(400);
  });

  it('opens from the form, which posts its plan in a field', async () => {
    await post('?as=html', `plan=${encodeURIComponent(JSON.stringify(plan))}`)
      .set('content-type', 'application/x-www-form-urlencoded')
      .expect(200);
  });
});

describe('the words of a storm card', () => {
  it.each(demoPlans().map(({ id, plan: each }) => [id, each] as const))('to %s', (_, each) => {
    const reading = readPlan(each);
    if (!reading.ok) throw new Error('a demo plan is readable');
    const owned = ownersWords(each);
    for (const forecast of [
      undefined,
      { speed: 1 },
      { speed: 30, basis: 'gust3' },
      { speed: 60, basis: 'mean-hour' },
    ] as const) {
      const card = stormCardOf(assess(reading.input), forecast);
      const document = stormDocument(card);
      const page = textOfMarkup(sheetHtml(stormSheet(card, document, '9.9.9'), { styles: [], icon: '', home: '' }));
      for (const text of [stormText(card, []), page]) expect(forbiddenIn(text, owned)).toEqual([]);
      const said = [document.says, ...[...document.rows, ...document.postures].map(({ says }) => says)];
      expect(said.flatMap((says) => sentencesOf(says, owned)).filter(({ words }) => words > 20)).toEqual([]);
    }
  });
});
