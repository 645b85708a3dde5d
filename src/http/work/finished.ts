import type { FastifyReply } from 'fastify';
import type { Verdict } from '../../margins/index.ts';
import { type Paper, type PaperOrder, paperOrder, type Sheet, sheetHtml } from '../../worksheet/index.ts';
import type { PrintShop } from '../paper/print-shop.ts';
import type { worksheetLook } from '../worksheets/worksheet-page.ts';

/** Lets others be served between two parts of a long answer; in a thread of its own there are none. */
export type Pause = () => Promise<void>;

/** An answer ready to be sent: text, or what the press makes paper of. Plain data, which goes from one thread to another. */
export interface Finished {
  readonly type: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | PaperOrder;
  readonly verdicts: readonly Verdict[];
}

export type Look = ReturnType<typeof worksheetLook>;

/** How a sheet is to be had. */
export interface SheetAsked {
  readonly paper: Paper | undefined;
  readonly look: Look;
}

const TEXT_TYPE = 'text/plain; charset=utf-8';
const PAGE_TYPE = 'text/html; charset=utf-8';
export const JSON_TYPE = 'application/json; charset=utf-8';

export const asText = (text: string) => ({ type: TEXT_TYPE, body: text });
export const asJson = (document: object) => ({ type: JSON_TYPE, body: JSON.stringify(document) });
export const asPage = (sheet: Sheet, look: Look) => ({ type: PAGE_TYPE, body: sheetHtml(sheet, look) });

/** Unless one is named, the paper is that of a country that measures as the plan does. */
export const asPaper = (sheet: Sheet, paper: Paper | undefined) => ({
  type: 'application/pdf',
  body: paperOrder(sheet, paper ?? (sheet.units === 'us' ? 'letter' : 'a4')),
});

/** Sends what is finished; paper once it is printed, and nothing where nobody waits for it any more. */
export async function sendFinished(
  reply: FastifyReply,
  { type, headers, body }: Finished,
  shop: PrintShop,
): Promise<FastifyReply> {
  const sent = typeof body === 'string' ? body : await shop.print(body, reply.request.signal);
  if (sent === undefined) return reply.hijack();
  return reply.headers(headers).header('vary', 'accept').type(type).send(sent);
}
