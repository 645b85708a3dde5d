import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/http/version.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const post = (path: string, body: unknown) =>
  running
    .request()
    .post(path)
    .send(body as object);

interface State {
  readonly id: string;
  readonly verdict: string;
  readonly ratio?: number;
  readonly holdsTo?: unknown;
}

const stateOf = ({ id, verdict, ratio, holdsTo }: State & { holdsTo?: { gust: unknown } }) => ({
  id,
  verdict,
  ...(ratio === undefined ? {} : { ratio }),
  ...(holdsTo === undefined ? {} : { holdsTo: holdsTo.gust }),
});

describe('POST /v1/additions', () => {
  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'says of %s before and after what a check of each plan says',
    async (_, plan) => {
      const [first] = plan['loads'] as { name: string }[];
      const proposals = [
        { name: 'one less', remove: [first?.name] },
        { name: 'more wind', set: { site: { wind: { speed: '120 mph' } } } },
        { name: 'one more', add: [{ name: 'added', height: '7.5 m', area: 0.4, areaKind: 'effective', offset: 0 }] },
      ];
      const { body } = await post('/v1/additions', { plan, proposals }).expect(200);
      const whole = async (of: unknown) => (await post('/v1/checks', of).expect(200)).body;
      const before = await whole(plan);
      expect(body.before.checks.map(({ title: __, ...state }: State & { title: string }) => state)).toEqual(
        before.checks.map(stateOf),
      );
      for (const [index, addition] of body.after.entries()) {
        expect(addition.name).toBe(proposals[index]?.name);
        const there = await whole(addition.plan);
        expect(addition.verdict).toBe(there.verdict);
        expect(addition.weakest).toBe(there.weakest);
        const after = addition.checks.flatMap(({ id, after: state }: { id: string; after?: object }) =>
          state ? [{ id, ...state }] : [],
        );
        expect(after).toEqual(there.checks.map(stateOf).toSorted((a: State, b: State) => order(addition, a, b)));
      }
      expect(body.after.map(({ rank }: { rank: number }) => rank).toSorted()).toEqual([1, 2, 3]);
    },
  );

  it('is traced to the version, to the plan as it is and to the plan each proposal makes', async () => {
    const plan = demoPlan('river-bluff');
    const request = { plan, proposals: [{ name: 'the beam gone', remove: ['four-element beam'] }] };
    const { body, headers } = await post('/v1/additions', request).expect(200);
    const hashOf = async (of: unknown) => (await post('/v1/checks', of).expect(200)).body.planHash;
    expect(body.version).toBe(VERSION);
    expect(body.before.planHash).toEqual(await hashOf(plan));
    expect(body.after[0].planHash).toEqual(await hashOf(body.after[0].plan));
    expect(body.after[0].planHash).not.toEqual(body.before.planHash);
    const traced = `Gustworthy ${VERSION}, plan format 2, SHA-256 ${body.before.planHash.format2}`;
    const text = await post('/v1/additions?as=text', request).expect(200);
    expect(text.text).toContain(`\n${traced}\n`);
    const html = await post('/v1/additions?as=html', request).expect(200);
    expect(html.text).toContain(`Gustworthy ${VERSION}, plan format 2, plan `);
    for (const each of [headers, text.headers, html.headers])
      expect([each['gustworthy-version'], each['gustworthy-plan']]).toEqual([VERSION, body.before.planHash.format2]);
  });

  it('ranks what leaves the most margin first, and says what is open of it', async () => {
    const proposals = [
      { name: 'a heavy one', add: [{ name: 'big', above: 3, area: 12, areaKind: 'effective' }] },
      { name: 'the beam gone', remove: ['four-element beam'] },
    ];
    const { body } = await post('/v1/additions', { plan: demoPlan('river-bluff'), proposals }).expect(200);
    expect(body.after.map(({ rank }: { rank: number }) => rank)).toEqual([2, 1]);
    expect(body.says).toMatch(
      /^Of 2 proposals "the beam gone" comes first, with parts still open\. the beam gone: the /,
    );
    const text = await post('/v1/additions?as=text', { plan: demoPlan('river-bluff'), proposals }).expect(200);
    expect(text.text.startsWith(`Heron Bluff\n\n${body.says}\n`)).toBe(true);
    expect(text.text).toContain('1. the beam gone: the tower goes from 0.943 to ');
    expect(text.text).toContain('a licensed engineer decide');
  });

  it.each(['ratedWind', 'weight'])('gives no better rank to an antenna whose %s is not given', async (field) => {
    const beam = { area: 3, areaKind: 'effective', weight: 30, ratedWind: { speed: 60, basis: 'gust3-nominal' } };
    const { [field as keyof typeof beam]: _, ...silent } = beam;
    const proposals = [silent, beam].map((load, index) => ({
      name: `${index}`,
      swap: [{ load: 'four-element beam', with: load }],
    }));
    const request = { plan: demoPlan('river-bluff'), proposals };
    const { body } = await post('/v1/additions', request).expect(200);
    expect(body.after.map(({ rank }: { rank: number }) => rank)).toEqual([2, 1]);
    expect(body.says).toMatch(/^Of 2 proposals "1" comes first/);
    const { text } = await post('/v1/additions?as=text', request).expect(200);
    expect(text).toMatch(/\n1\. 1: [\s\S]*\n2\. 0: /);
    const sheet = (await post('/v1/additions?as=html', request).expect(200)).text;
    expect(sheet.indexOf('1. 1</h')).toBeLessThan(sheet.indexOf('2. 0</h'));
    expect(sheet.indexOf('1. 1</h')).toBeGreaterThan(0);
    expect(sheet).toContain('Each part as it is and with each proposal');
  });

  const ten = demoPlan('ten-numbers');
  const [beam] = ten['loads'] as Record<string, unknown>[];
  const { ratings: _, ...unrated } = ten;
  const tower = ten['tower'] as object;
  const site = ten['site'] as object;
  const vertical = { name: 'vertical', above: 6, shape: 'tube', diameter: 1.5, length: 8 };
  /** Each proposal, and the plan it makes, written by hand. */
  const BY_HAND: readonly (readonly [Record<string, unknown>, object])[] = [
    [
      { name: 'add', add: [vertical] },
      { ...ten, loads: [beam, vertical] },
    ],
    [
      { name: 'remove', remove: ['beam'] },
      { ...ten, loads: [] },
    ],
    [
      { name: 'swap', swap: [{ load: 'beam', with: { name: 'small beam', area: 3.2, areaKind: 'effective' } }] },
      { ...ten, loads: [{ name: 'small beam', on: 'tower', above: 2, area: 3.2, areaKind: 'effective' }] },
    ],
    [
      { name: 'move', move: [{ load: 'beam', height: '40 ft' }] },
      { ...ten, loads: [{ name: 'beam', on: 'tower', area: 5.5, height: '40 ft' }] },
    ],
    [
      { name: 'lower', set: { tower: { top: 38 } } },
      { ...ten, tower: { ...tower, top: 38 } },
    ],
    [{ name: 'no rating', set: { ratings: null } }, unrated],
    [
      { name: 'gale', set: { site: { wind: 60 } } },
      { ...ten, site: { ...site, wind: 60 } },
    ],
    [
      { name: 'all of it', add: [vertical], remove: ['beam'], set: { site: { exposure: 'B' } } },
      { ...ten, site: { ...site, exposure: 'B' }, loads: [vertical] },
    ],
  ];

  it('says of each kind of change what a check of the plan written by hand says', async () => {
    const { body } = await post('/v1/additions', { plan: ten, proposals: BY_HAND.map(([proposal]) => proposal) });
    const before = (await post('/v1/checks', ten).expect(200)).body;
    expect(body.before).toMatchObject({ verdict: before.verdict, says: before.says, roomLeft: before.roomLeft });
    expect(body.after).toHaveLength(BY_HAND.length);
    for (const [index, [{ name }, plan]] of BY_HAND.entries()) {
      const then = (await post('/v1/checks', plan).expect(200)).body;
      const after = body.after[index];
      expect(after.plan, `${name}`).toEqual({ ...plan, format: after.plan.format });
      for (const field of ['verdict', 'decided', 'parts', 'weakest', 'roomLeft']) {
        expect(after[field], `${name} ${field}`).toEqual(then[field]);
      }
      const states = new Map(after.checks.map((check: { id: string; after?: object }) => [check.id, check.after]));
      for (const check of then.checks) {
        const { id, ...state } = stateOf(check);
        expect(states.get(id), `${name} ${id}`).toEqual(state);
        const was = before.checks.find((each: State) => each.id === id);
        const { change, holdsToChange } = after.checks.find((each: State) => each.id === id);
        if (was?.ratio !== undefined && check.ratio !== undefined)
          expect(change).toBeCloseTo(check.ratio - was.ratio, 12);
        else expect(change).toBeUndefined();
        if (was?.holdsTo && check.holdsTo) {
          expect(holdsToChange.value).toBeCloseTo(check.holdsTo.gust.value - was.holdsTo.gust.value, 9);
          expect(holdsToChange.unit).toBe('mph');
        } else expect(holdsToChange).toBeUndefined();
      }
      for (const { id } of after.checks.filter((check: { after?: object }) => check.after === undefined)) {
        expect(then.checks.map((check: State) => check.id)).not.toContain(id);
      }
      const said = (cautions: { code: string; says: string }[]) => cautions.map(({ says }) => says);
      const added = said(then.cautions).filter((each) => !said(before.cautions).includes(each));
      const removed = said(before.cautions).filter((each) => !said(then.cautions).includes(each));
      expect(said(after.added.cautions), `${name}`).toEqual(added);
      expect(said(after.removed.cautions), `${name}`).toEqual(removed);
    }
    const of = (name: string) => body.after.find((after: { name: string }) => after.name === name);
    expect(of('add')).toMatchObject({ added: { loads: ['vertical'] }, removed: { loads: [] } });
    expect(of('swap')).toMatchObject({ added: { loads: ['small beam'] }, removed: { loads: ['beam'] } });
    expect(of('add').says).toContain('Open with it: vertical.');
    expect(of('no rating').says).toMatch(/^no rating: the tower is open\. /);
    // A speed low for its kind is asked about where it was written.
    expect(of('gale').entryWarnings).toMatchObject([{ pointer: '#/proposals/6/set/site/wind' }]);
    expect(of('add').entryWarnings).toMatchObject([{ pointer: '#/proposals/0/add/0/above', code: 'read-as-middle' }]);
    expect(of('lower').entryWarnings).toEqual([]);
    expect(body.notCovered).toContain('earthquake');
    const text = (await post('/v1/additions?as=text', { plan: ten, proposals: BY_HAND.map(([proposal]) => proposal) }))
      .text;
    for (const { rank, says, entryWarnings, added } of body.after) {
      expect(text).toContain(`\n${rank}. ${says}\n`);
      for (const query of entryWarnings) expect(text).toContain(query.says);
      for (const caution of added.cautions) expect(text).toContain(caution.says);
    }
    expect(text).not.toContain('#/');
    for (const what of body.notCovered) expect(text).toContain(what);
  });

  it('does not call the plan without its rating the best', async () => {
    const proposals = [
      { name: 'unrated', set: { ratings: null } },
      { name: 'as heavy', move: [{ load: 'four-element beam', height: 51 }] },
    ];
    const { body } = await post('/v1/additions', { plan: demoPlan('river-bluff'), proposals }).expect(200);
    expect(body.after.map(({ rank }: { rank: number }) => rank)).toEqual([2, 1]);
    expect(body.after[0].says).toMatch(/ No longer decided: tower, tower top and footing\.$/);
    expect(body.after[1].says).toMatch(/^as heavy: the tower .*\. It then holds to an actual gust of [\d.]+ mph/);
  });

  it('answers forty proposals of many loads', async () => {
    const loads = Array.from({ length: 60 }, (__, index) => ({ name: `n${index}`, above: 1, area: 0.001 }));
    const proposals = Array.from({ length: 40 }, (__, index) => ({ name: `p${index}`, add: loads }));
    const { body } = await post('/v1/additions', { plan: ten, proposals }).expect(200);
    expect(body.after).toHaveLength(40);
    await post('/v1/additions', { plan: ten, proposals: [...proposals, { name: 'more', add: loads }] }).expect(422);
  });

  it('refuses a patch without end, and a plan that is none', async () => {
    const deep = `${'{"a":'.repeat(20_000)}1${'}'.repeat(20_000)}`;
    const { body } = await running
      .request()
      .post('/v1/additions')
      .set('content-type', 'application/json')
      .send(`{"plan":${JSON.stringify(ten)},"proposals":[{"name":"deep","set":${deep}}]}`)
      .expect(422);
    expect(body.faults).toMatchObject([{ pointer: '#/proposals/0/set' }]);
    const none = await post('/v1/additions', { proposals: [{ name: 'a', remove: ['beam'] }] }).expect(422);
    expect(none.body.faults).toMatchObject([{ pointer: '#/plan' }]);
    await post('/v1/additions', {}).expect(422);
    await post('/v1/additions?as=pdf', {}).expect(400);
    await post('/v1/additions', {}).set('accept', 'image/png').expect(406);
  });

  it('answers what does not fit with a problem that points into the request', async () => {
    const { body } = await post('/v1/additions', {
      plan: demoPlan('river-bluff'),
      proposals: [{ name: 'a', move: [{ load: 'beam', above: 1 }] }],
    }).expect(422);
    expect(body.faults).toMatchObject([{ pointer: '#/proposals/0/move/0/load', code: 'unknown-load' }]);
  });
});

function order({ checks }: { checks: { id: string }[] }, a: State, b: State): number {
  return checks.findIndex(({ id }) => id === a.id) - checks.findIndex(({ id }) => id === b.id);
}
