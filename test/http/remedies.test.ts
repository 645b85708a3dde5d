import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { answerSchema } from '../../src/answer/index.ts';
import { demoPlan, demoPlans } from '../margins/demo-plan.ts';
import { runningApp } from './running-app.ts';

const running = runningApp();
const post = (query: string, plan: unknown) =>
  running
    .request()
    .post(`/v1/checks${query}`)
    .send(plan as object);

/** The contract, which then refuses fields that it does not name. */
const strictly = z.fromJSONSchema(
  z.toJSONSchema(answerSchema, {
    override: ({ jsonSchema }) => {
      if (jsonSchema.type === 'object' && jsonSchema.properties) jsonSchema.additionalProperties = false;
    },
  }) as Parameters<typeof z.fromJSONSchema>[0],
);

describe('POST /v1/checks?remedies=full', () => {
  it.each(demoPlans().map(({ id, plan }) => [id, plan] as const))(
    'answers %s as the contract says, in text as in JSON',
    async (_, plan) => {
      const { body } = await post('?remedies=full', plan).expect(200);
      expect(strictly.safeParse(body).error?.issues ?? []).toEqual([]);
      expect(body.remedies.ofCheck).toBe(body.weakest);
      expect(body.remedies.rows.length).toBeGreaterThan(0);
      const { text } = await post('?as=text&remedies=full', plan).expect(200);
      expect(text).toContain('\nWhat would help:\n');
      for (const row of body.remedies.rows) {
        for (const { says } of [row, ...row.also]) expect(text).toContain(`\n- ${says}\n`);
      }
    },
  );

  it('shows them only when asked', async () => {
    const plan = demoPlan('river-bluff');
    const { body } = await post('', plan).expect(200);
    expect(body).not.toHaveProperty('remedies');
    const { body: none } = await post('?remedies=none', plan).expect(200);
    expect(none).not.toHaveProperty('remedies');
    await post('?remedies=all', plan).expect(400);
  });

  it('has none where nothing is proven', async () => {
    const { ratings: _, ...unrated } = demoPlan('ten-numbers');
    const { body } = await post('?remedies=full', unrated).expect(200);
    expect(body).not.toHaveProperty('remedies');
  });
});
