/**
 * A thing with its article, as it is spoken: an 8 in tube, an hourly mean.
 *
 * an before a vowel sound, 8…, 11 and 18
 *
 * @example withArticle('85 mph gust') // 'an 85 mph gust'
 * @example withArticle('1.8 in tube') // 'a 1.8 in tube'
 */
export function withArticle(words: string): string {
  return `${/^(?:[aeio]|hour|8|1[18](?!\d))/i.test(words) ? 'an' : 'a'} ${words}`;
}
