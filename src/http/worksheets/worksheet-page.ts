import { assetAddress } from '../../page/index.ts';

/** What a worksheet takes to be a page under /v1/. */
export function worksheetLook() {
  return {
    styles: ['fonts.css', 'sheet.css', 'worksheet.css'].map((name) => assetAddress(name, '../')),
    icon: assetAddress('mark.svg', '../'),
    home: '../',
  };
}
