import { expect, test } from 'vitest';
import { stringSharing } from '../../src/publish/shared-strings.ts';

test('what is shared says the same as before, at every depth and whatever stands between', () => {
  const share = stringSharing();
  const written = [
    '{"a":"tap shut","b":[{"a":"tap shut"},null,3,true,["tap shut",""]],"c":{}}',
    '["tap shut","bowl drained"]',
  ];
  for (const text of [...written, '"tap shut"', 'null', '7']) {
    const value = JSON.parse(text);
    expect(share(value)).toBe(value);
    expect(value).toEqual(JSON.parse(text));
  }
});
