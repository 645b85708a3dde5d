import { assetAddress } from '../../page/index.ts';
import { type Sheet, sheetHtml } from '../../worksheet/index.ts';

/** A worksheet as a page under /v1/. */
export function worksheetPage(sheet: Sheet): string {
  return sheetHtml(sheet, {
    styles: [assetAddress('sheet.css', '../'), assetAddress('worksheet.css', '../')],
    icon: assetAddress('mark.svg', '../'),
    home: '../',
  });
}
