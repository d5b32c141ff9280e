import { expect, test } from 'vitest';
import { languageTag } from '../../src/browser/language.ts';

test('a device always has a language that dates can be written in', () => {
  expect(languageTag('nb-NO')).toBe('nb-NO');
  expect(languageTag('de')).toBe('de');
  expect(languageTag('en-US@posix')).toBe('en-US');
  expect(languageTag('zh-Hant-TW')).toBe('zh-Hant-TW');
  for (const odd of ['', 'C', '*', 'x', '!!', 'en_US.UTF-8', 'fr-FR-u-ca-']) {
    const tag = languageTag(odd);
    expect(() => new Intl.DateTimeFormat(tag).format(0)).not.toThrow();
  }
});
