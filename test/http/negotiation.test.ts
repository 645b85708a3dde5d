import { describe, expect, it } from 'vitest';
import { chosenForm } from '../../src/http/negotiation.ts';

const offered = { json: 'application/json', text: 'text/plain' };

describe('the form of an answer', () => {
  it.each([
    [undefined, 'json'],
    ['', 'json'],
    ['*/*', 'json'],
    ['text/plain', 'text'],
    ['text/*', 'text'],
    ['TEXT/PLAIN;charset=utf-8', 'text'],
    ['application/json;q=0.2, text/plain;q=0.8', 'text'],
    ['text/plain, */*;q=0.1', 'text'],
    ['application/json;q=0, */*', 'text'],
    ['text/html, */*;q=0.5', 'json'],
  ])('for the accept header %j is %s', (accept, wanted) => {
    expect(chosenForm(offered, undefined, accept)).toBe(wanted);
  });

  it('is what the query says, whatever the header', () => {
    expect(chosenForm(offered, 'text', 'application/json')).toBe('text');
  });

  it.each(['image/png', 'application/json;q=0', 'text/plain;q=nonsense'])('does not exist for %j', (accept) => {
    expect(() => chosenForm(offered, undefined, accept)).toThrow('application/json or text/plain');
  });
});
