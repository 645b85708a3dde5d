const END_OF_DIRECTORY = 0x06054b50;
const DIRECTORY_ENTRY = 0x02014b50;

/** 1 January 1980, 0 h: the first moment a zip archive can name. */
const FIRST_MOMENT = 0x00210000;

/** The archive with the first moment as the time of every entry, so that the same content gives the same bytes. */
export function withFixedClock(zip: Uint8Array): Uint8Array {
  const bytes = Uint8Array.from(zip);
  const view = new DataView(bytes.buffer);
  const end = bytes.length - 22;
  if (view.getUint32(end, true) !== END_OF_DIRECTORY) throw new Error('not a zip archive without a comment');
  let at = view.getUint32(end + 16, true);
  for (let entries = view.getUint16(end + 10, true); entries > 0; entries -= 1) {
    if (view.getUint32(at, true) !== DIRECTORY_ENTRY) throw new Error('a zip archive without a whole directory');
    view.setUint32(at + 12, FIRST_MOMENT, true);
    view.setUint32(view.getUint32(at + 42, true) + 10, FIRST_MOMENT, true);
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return bytes;
}
