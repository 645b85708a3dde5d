import { describe, expect, it } from 'vitest';
import { addressOfContact, contactOfClub } from '../../src/http/club.ts';
import { runningApp } from './running-app.ts';

describe('a contact', () => {
  it.each([
    ['mast@club.example', 'mailto:mast@club.example'],
    ['https://club.example/towers?a=1', 'https://club.example/towers?a=1'],
    ['phone the secretary', undefined],
    ['javascript:alert(1)', undefined],
    ['javascript:alert(1)@club.example', undefined],
    ['mast@club.example?bcc=all@a.example', undefined],
    ['https://club.example/"onclick="x', undefined],
    ['', undefined],
  ])('%j leads to %j', (contact, address) => {
    expect(addressOfContact(contact)).toBe(address);
  });

  it('stands in the contract as its parts', () => {
    expect(contactOfClub({ name: '', contact: '' })).toBeUndefined();
    expect(contactOfClub({ name: 'Club', contact: 'a@b.example' })).toEqual({ name: 'Club', email: 'a@b.example' });
    expect(contactOfClub({ name: '', contact: 'https://b.example' })).toEqual({ url: 'https://b.example' });
    expect(contactOfClub({ name: '', contact: 'the secretary' })).toEqual({ name: 'the secretary' });
  });
});

describe('a service with a name and a contact', () => {
  const running = runningApp({ club: { name: 'Mast & <Dish> club', contact: 'mast@club.example' } });

  it('shows them on its page, escaped, and in the contract', async () => {
    const { text } = await running.request().get('/').expect(200);
    expect(text).toContain('Run by <a href="mailto:mast@club.example">Mast &amp; &lt;Dish');
    expect(text).not.toContain('<Dish');
    const { body } = await running.request().get('/openapi.json').expect(200);
    expect(body.info.contact).toEqual({ name: 'Mast & <Dish> club', email: 'mast@club.example' });
  });
});
