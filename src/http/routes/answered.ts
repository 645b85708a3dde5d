import type { FastifyReply } from 'fastify';
import type { z } from 'zod';
import type { DecimalSign } from '../../plan/index.ts';
import type { PrintShop } from '../paper/print-shop.ts';
import { postedDocument } from '../posted-document.ts';
import type { AnswerKind, AskedOf } from '../work/answers.ts';
import { sendFinished } from '../work/finished.ts';
import type { Workshop } from '../work/workshop.ts';

const COUNTED: Partial<Record<AnswerKind, 'check' | 'addition'>> = { check: 'check', additions: 'addition' };

export type Answered = ReturnType<typeof answeredBy>;

/** Answers what was posted, wherever that is computed. */
export function answeredBy(workshop: Workshop, shop: PrintShop) {
  return async <K extends AnswerKind>(
    reply: FastifyReply,
    kind: K,
    schema: z.ZodObject,
    asked: AskedOf[K],
  ): Promise<FastifyReply> => {
    const { body, query, signal, server } = reply.request;
    const { decimal = 'point' } = query as { decimal?: DecimalSign };
    const posted = postedDocument(body, schema, decimal);
    const finished = await workshop.answer(kind, posted, decimal, asked, signal);
    if (finished === undefined) return reply.hijack();
    const call = COUNTED[kind];
    if (call !== undefined) for (const verdict of finished.verdicts) server.metrics.verdict(call, verdict);
    return sendFinished(reply, finished, shop);
  };
}
