import { describe, expect, it } from 'vitest';
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
  readonly use?: number;
  readonly holdsTo?: unknown;
}

const stateOf = ({ id, verdict, use, holdsTo }: State & { holdsTo?: { gust: unknown } }) => ({
  id,
  verdict,
  ...(use === undefined ? {} : { use }),
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
        { name: 'one more', add: [{ name: 'added', height: '7.5 m', area: 0.4, areaKind: 'effective' }] },
      ];
      const { body } = await post('/v1/additions', { plan, proposals }).expect(200);
      const whole = async (of: unknown) => (await post('/v1/checks', of).expect(200)).body;
      const before = await whole(plan);
      expect(body.before.links.map(({ title: __, ...state }: State & { title: string }) => state)).toEqual(
        before.links.map(stateOf),
      );
      for (const [index, addition] of body.after.entries()) {
        expect(addition.name).toBe(proposals[index]?.name);
        const there = await whole(addition.plan);
        expect(addition.verdict).toBe(there.verdict);
        expect(addition.weakest).toBe(there.weakest);
        const after = addition.links.flatMap(({ id, after: state }: { id: string; after?: object }) =>
          state ? [{ id, ...state }] : [],
        );
        expect(after).toEqual(there.links.map(stateOf).toSorted((a: State, b: State) => order(addition, a, b)));
      }
      expect(body.after.map(({ rank }: { rank: number }) => rank).toSorted()).toEqual([1, 2, 3]);
    },
  );

  it('ranks what leaves the weakest link the most first, and says so', async () => {
    const proposals = [
      { name: 'a heavy one', add: [{ name: 'big', above: 3, area: 12, areaKind: 'effective' }] },
      { name: 'the beam gone', remove: ['four-element beam'] },
    ];
    const { body } = await post('/v1/additions', { plan: demoPlan('river-bluff'), proposals }).expect(200);
    expect(body.after.map(({ rank }: { rank: number }) => rank)).toEqual([2, 1]);
    expect(body.says).toMatch(/^Of 2 proposals "the beam gone" leaves the weakest link the most\. the beam gone: the /);
    const text = await post('/v1/additions?as=text', { plan: demoPlan('river-bluff'), proposals }).expect(200);
    expect(text.text).toMatch(/^Of 2 proposals/);
    expect(text.text).toContain('1. the beam gone: the tower goes from 0.943 to ');
    expect(text.text).toContain('a licensed engineer decide');
  });

  it('answers what does not fit with a problem that points into the request', async () => {
    const { body } = await post('/v1/additions', {
      plan: demoPlan('river-bluff'),
      proposals: [{ name: 'a', move: [{ load: 'beam', above: 1 }] }],
    }).expect(422);
    expect(body.faults).toMatchObject([{ pointer: '#/proposals/0/move/0/load', code: 'unknown-load' }]);
  });
});

function order({ links }: { links: { id: string }[] }, a: State, b: State): number {
  return links.findIndex(({ id }) => id === a.id) - links.findIndex(({ id }) => id === b.id);
}
