import { assetAddress } from '../../page/index.ts';
import { type Sheet, sheetHtml } from '../../worksheet/index.ts';

/** A worksheet as a page under /v1/. */
export function worksheetPage(sheet: Sheet): string {
  return sheetHtml(sheet, {
    styles: ['fonts.css', 'sheet.css', 'worksheet.css'].map((name) => assetAddress(name, '../')),
    icon: assetAddress('mark.svg', '../'),
    home: '../',
  });
}
