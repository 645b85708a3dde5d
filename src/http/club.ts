import type { Configuration } from './configuration.ts';

export type Club = Configuration['club'];

/** Where a contact leads: a mail address or a web page; undefined where it is neither, and stays words. */
export function addressOfContact(contact: string): string | undefined {
  if (/^https?:\/\/[^\s"'<>]+$/i.test(contact)) return contact;
  return /^[^\s@"'<>:/?#&%]+@[^\s@"'<>:/?#&%]+\.[^\s@"'<>:/?#&%]+$/.test(contact) ? `mailto:${contact}` : undefined;
}

/** Who runs the service, as the contract has it (OpenAPI 3.1, contact object). */
export function contactOfClub({ name, contact }: Club): { name?: string; email?: string; url?: string } | undefined {
  if (name === '' && contact === '') return undefined;
  const address = addressOfContact(contact);
  return {
    ...(name === '' && address !== undefined ? {} : { name: name === '' ? contact : name }),
    ...(address?.startsWith('mailto:') ? { email: contact } : address === undefined ? {} : { url: address }),
  };
}
