import type { PaperOrder } from './paper-order.ts';
import { TypstPress } from './typst-press.ts';

/** What the press sends back for an order. */
export type PressAnswer = { readonly pdf: Uint8Array } | { readonly failed: string };

const press = new TypstPress();

function answered(order: PaperOrder): PressAnswer {
  try {
    return { pdf: press.print(order) };
  } catch (error) {
    // The library leaves the message empty; its words stand in the code, and hold the texts of the sheet in backticks.
    const { code, message } = error as { code?: unknown; message?: unknown };
    return {
      failed: String(code || message || error)
        .replaceAll(/`[^`]*`/g, '`…`')
        .slice(0, 2000),
    };
  }
}

process.on('message', (order: PaperOrder) => process.send?.(answered(order)));
