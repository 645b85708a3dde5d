import { describe, expect, it } from 'vitest';
import { CELLS } from '../../src/plan/index.ts';
import { textOf, wellFormed } from '../drawing/well-formed.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { roundedTo, sheetFigures, worksheetFigures, worksheetUse } from './exact-rounding.ts';
import { runningApp } from './running-app.ts';

interface Quantity {
  readonly value: number;
  readonly unit: string;
}

interface Check {
  readonly id: string;
  readonly title: string;
  readonly verdict: string;
  readonly ratio?: number;
  readonly ratioRange?: readonly [number, number];
  readonly demand?: Quantity & { readonly of: string };
  readonly capacity?: Quantity;
  readonly holdsTo?: { readonly gust: Quantity; readonly design: Quantity; readonly atBest?: Quantity };
}

type WindLoads = Readonly<Record<string, number | string>>;

interface Answer {
  readonly says: string;
  readonly checks: readonly Check[];
  readonly parts: readonly { readonly kind: string; readonly governs: string }[];
  readonly reactions: { readonly legs?: { readonly push?: Quantity; readonly upliftWithoutWeight: Quantity } };
  readonly windLoads: { readonly rows: readonly WindLoads[]; readonly total: WindLoads };
}

const running = runningApp();

const post = (query: string, plan: unknown) =>
  running
    .request()
    .post(`/v1/checks${query}`)
    .send(plan as object)
    .expect(200);
const answerTo = async (plan: unknown): Promise<Answer> => (await post('', plan)).body;
const drawing = async (name: string, plan: unknown): Promise<string> =>
  textOf(wellFormed(((await post(`?as=svg&drawing=${name}`, plan)).body as Buffer).toString('utf8')));

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** What a reader sees of a piece of a page, its cells with a bar between. */
function lettersOf(page: string): string {
  return page
    .replaceAll(/<\/t[hd]>/g, '|')
    .replaceAll(/<[^>]+>/g, '')
    .replaceAll(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => ENTITIES[name] as string);
}

const inWords = ({ value, unit }: Quantity, figures = 3) => `${worksheetFigures(value, figures)} ${unit}`;
/** The words, with no digit before or after that would make it another number. */
const alone = (words: string) =>
  new RegExp(`(?<![\\d.,])${words.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\d]|[.,]\\d)`);
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

describe('the rounding of this test', () => {
  it('is that of a hand', () => {
    expect(roundedTo(0.125, 2)).toBe('0.13');
    expect(roundedTo(2.5, 0)).toBe('3');
    expect(roundedTo(1.005, 2)).toBe('1.00');
    expect(roundedTo(-1.25, 1)).toBe('-1.3');
    expect([0.00199, 0.94302, 0.49027, 12.04, 1234.5, 12345678.9].map((value) => worksheetFigures(value))).toEqual([
      '0.00199',
      '0.943',
      '0.49',
      '12',
      '1,235',
      '12,345,679',
    ]);
    expect(worksheetFigures(590.2788, 4)).toBe('590.3');
    expect([0.99949, 0.99951, 1, 1.0011, 1.236].map(worksheetUse)).toEqual([
      '0.999',
      '0.9995',
      '1.00',
      '1.001',
      '1.24',
    ]);
    expect([26.24010996, 0.000123456789, 123456789].map(sheetFigures)).toEqual(['26.2401', '0.000123457', '123456789']);
  });
});

describe.each(demoPlans().map(({ id, plan }) => [id, plan] as const))('the numbers of the demo plan %s', (_, plan) => {
  it('are in the html as in the JSON', async () => {
    const { says, checks, reactions } = await answerTo(plan);
    const { text } = await post('?as=html', plan);
    expect(lettersOf(text)).toContain(says);
    const { push, upliftWithoutWeight } = reactions.legs ?? {};
    if (upliftWithoutWeight !== undefined) {
      expect(lettersOf(text)).toContain(inWords(push ?? upliftWithoutWeight, 4));
    }
    const [, part = ''] = text.split('<section id="checks"');
    const rows = (part.split('</section>')[0] as string)
      .split('<tr>')
      .slice(2)
      .map((row) => lettersOf(row).split('|'));
    expect(rows.map(([title]) => title)).toEqual(checks.map(({ title }) => capital(title)));
    for (const [index, { ratio, ratioRange, holdsTo, demand, capacity }] of checks.entries()) {
      const [, verdict, wanted, offered, printed, best, , gust] = rows[index] as string[];
      expect(verdict).toBe((checks[index] as Check).verdict.replace('-', ' '));
      if (ratio === undefined) {
        expect(printed).toMatch(/^–?$/);
        continue;
      }
      expect(printed).toBe(worksheetUse(ratio));
      if (ratioRange !== undefined && ratioRange[0] < ratio) expect(best).toBe(worksheetUse(ratioRange[0]));
      if (holdsTo !== undefined) expect(gust).toBe(worksheetFigures(holdsTo.gust.value));
      if (demand !== undefined && capacity !== undefined && demand.of !== 'wind-ratio') {
        expect([wanted, offered]).toEqual([inWords(demand, 4), inWords(capacity, 4)]);
      }
    }
  });

  it('are in the text as in the JSON', async () => {
    const { says, checks } = await answerTo(plan);
    const lines = (await post('?as=text', plan)).text.split('\n').map((line) => line.replace(/^- /, ''));
    expect(lines.some((line) => line.includes(says))).toBe(true);
    let compared = 0;
    for (const { title, ratio, ratioRange, holdsTo, demand, capacity } of checks) {
      const line = lines.find((each) => each.startsWith(`${capital(title)}: `));
      expect(line, title).toBeDefined();
      if (ratio === undefined) {
        expect(line).not.toMatch(/\bratio \d/);
        continue;
      }
      expect(line).toMatch(alone(`ratio ${worksheetUse(ratio)}`));
      if (ratioRange !== undefined && ratioRange[0] < ratio)
        expect(line).toMatch(alone(`(${worksheetUse(ratioRange[0])} at best)`));
      if (holdsTo !== undefined) {
        const atBest = holdsTo.atBest === undefined ? '' : ` at worst, about ${inWords(holdsTo.atBest)} at best`;
        expect(line).toMatch(alone(`to an actual gust of ${inWords(holdsTo.gust)}${atBest}.`));
      }
      if (demand !== undefined && capacity !== undefined && demand.of !== 'wind-ratio') {
        expect(line).toContain(`Demand ${inWords(demand, 4)}`);
      }
      compared += 1;
    }
    expect(compared).toBeGreaterThan(0);
  });

  it('are on the drawings as in the JSON', async () => {
    const { checks, parts } = await answerTo(plan);
    const ladder = await drawing('ladder', plan);
    const ratio = await drawing('ratio', plan);
    // The description goes through the links in the order of the answer.
    let at = 0;
    for (const { title, ratio: own, holdsTo } of checks) {
      if (own === undefined) continue;
      const gust = holdsTo === undefined ? '' : `, holds to a gust of ${inWords(holdsTo.gust)}`;
      const words = `, ratio ${worksheetUse(own)}${gust}`;
      const found = ladder.indexOf(words, at);
      expect(found, `${title}${words}`).toBeGreaterThan(at);
      at = found + words.length;
      if (holdsTo === undefined) continue;
      // And the lettering beside the rung has both again.
      const lettering = ladder.slice(ladder.indexOf('actual 3-second gust'));
      expect(lettering, title).toMatch(alone(worksheetUse(own)));
      expect(lettering, title).toContain(inWords(holdsTo.gust));
      expect(ratio, title).toContain(`${worksheetUse(own)}, reaching 1 at ${inWords(holdsTo.design)}`);
    }
    // The ring stands where the verdict of the tower comes from.
    const governs = parts.find(({ kind }) => kind === 'tower')?.governs;
    const tower = checks.find(({ id }) => id === governs);
    if (tower?.ratio !== undefined) {
      expect(await drawing('elevation', plan)).toMatch(alone(worksheetUse(tower.ratio)));
    }
  });

  it('are in the ledger as in the JSON, to six figures', async () => {
    const { windLoads } = await answerTo(plan);
    const { text } = await post('?as=csv', plan);
    const [, ...lines] = text.replace('\uFEFF', '').trimEnd().split('\r\n');
    expect(lines).toHaveLength(windLoads.rows.length + 1);
    const fields = 'low high front side coefficient facing pressure gustEffect force momentAtBase momentAtTop'.split(
      ' ',
    );
    for (const [index, row] of [...windLoads.rows, windLoads.total].entries()) {
      const cells = (lines[index] as string).replaceAll(/"(?:[^"]|"")*"/g, 'text').split(',');
      for (const [column, field] of fields.entries()) {
        const value = row[field];
        const words = typeof value === 'number' ? sheetFigures(value) : '';
        expect(cells[column + 2], `${index} ${field}`).toBe(words);
      }
    }
  });
});

/** What the address of the cell of a station says of a plan; nothing where the plan holds more than that. */
function stationQuery(plan: Readonly<Record<string, unknown>>): URLSearchParams | undefined {
  const { format: _, title: __, ...rest } = structuredClone(plan) as Record<string, unknown>;
  const leaves = new Map<string, unknown>();
  const walk = (value: unknown, at: string) => {
    if (typeof value === 'object' && value !== null)
      for (const [key, member] of Object.entries(value)) walk(member, `${at}/${key}`);
    else leaves.set(at, value);
  };
  walk(rest, '');
  for (const short of ['/site/wind', '/ratings/0/wind']) {
    if (leaves.has(short)) leaves.set(`${short}/speed`, leaves.get(short));
    leaves.delete(short);
  }
  if (leaves.get('/ratings/0/of') === 'tower') leaves.delete('/ratings/0/of');
  leaves.delete('/loads/0/name');
  const query = new URLSearchParams({ units: String(leaves.get('/units')) });
  leaves.delete('/units');
  for (const [name, { at }] of Object.entries(CELLS.station.parameters)) {
    const place = at.find((each) => leaves.has(each));
    if (place === undefined) continue;
    query.set(name, String(leaves.get(place)));
    leaves.delete(place);
  }
  return leaves.size === 0 ? query : undefined;
}

describe('the cell of a station', () => {
  const sayable = demoPlans().flatMap(({ id, plan }) =>
    stationQuery(plan) === undefined ? [] : [[id, plan] as const],
  );
  const ten = demoPlan('ten-numbers');
  const metric = {
    ...ten,
    units: 'si',
    site: { wind: 47, exposure: 'B' },
    tower: { ...(ten['tower'] as object), top: 15, width: 450 },
    loads: [{ name: 'beam', above: 0.6, area: 0.5, areaKind: 'effective' }],
    cables: [{ count: 3, diameter: 10.3 }],
    ratings: [
      {
        of: 'tower',
        area: 2.4,
        areaKind: 'effective',
        wind: { speed: 45, method: 'tia222-g', exposure: 'C', riskCategory: 'II' },
        top: 15,
      },
    ],
  };
  const small = { ...ten, ratings: [{ of: 'tower', area: 4, wind: { speed: 70, method: 'eia222-f' }, top: 48 }] };

  it('can say a demo plan', () => {
    expect(sayable.map(([id]) => id)).toContain('ten-numbers');
  });

  it.each([...sayable, ['in metres', metric], ['with a small rating', small]] as const)(
    'has the numbers of the whole answer: %s',
    async (_, plan) => {
      const [tower] = (await answerTo(plan)).checks;
      const query = stationQuery(plan) as URLSearchParams;
      const cell = async (give: string) =>
        (await running.request().get(`/v1/cells/station?${query}&give=${give}&strict=1`).expect(200)).text;
      // A figure that would read as fit beside a verdict that does not say so is held back.
      const heldBack = tower?.verdict === 'open' && (tower.ratio ?? 0) <= 1;
      expect(await cell('ratio')).toBe(heldBack ? 'open' : sheetFigures(tower?.ratio ?? Number.NaN));
      expect(await cell('holdsTo')).toBe(heldBack ? 'open' : sheetFigures(tower?.holdsTo?.gust.value ?? Number.NaN));
      // An address has no name for what hangs there.
      expect(await cell('says')).toBe((await answerTo(plan)).says.replaceAll('beam', 'antenna'));
    },
  );
});
