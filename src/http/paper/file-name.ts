/**
 * The header that names a downloaded sheet after its plan: an ASCII name for all, the letters of the plan beside it for
 * those who read RFC 8187. What could end a quoted string, leave a folder or start a new header is not in either.
 */
export function pdfDisposition(title: string, kind = 'worksheet'): string {
  const words = title
    .toWellFormed()
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '');
  const name = Array.from(words).slice(0, 60).join('').replace(/-+$/, '');
  const ascii = name
    .normalize('NFKD')
    .replaceAll(/\p{M}+/gu, '')
    .replaceAll(/[^\w-]+/g, '-')
    .replaceAll(/-{2,}/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase();
  const plain = `inline; filename="${ascii === '' ? kind : `${kind}-${ascii}`}.pdf"`;
  if (name === '' || /^[\w-]+$/.test(name)) return plain;
  return `${plain}; filename*=UTF-8''${encodeURIComponent(`${kind}-${name.toLowerCase()}.pdf`)}`;
}
