import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { writeFile } from '../../src/publish/write-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'write-file-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('texts and bytes, more parts than a system takes at once (1,024 on Linux), in a folder that is not there yet', () => {
  const parts = Array.from({ length: 3000 }, (_, i) => (i % 2 === 0 ? `${i} °C – ` : Buffer.from(`🚜${i}\n`)));
  const path = join(folder, 'a', 'b.txt');
  writeFile(path, ...parts);
  expect(readFileSync(path, 'utf8')).toBe(parts.map(String).join(''));
});

test('what was there before is gone', () => {
  const path = join(folder, 'c.txt');
  writeFile(path, 'a long text');
  writeFile(path, 'short');
  expect(readFileSync(path, 'utf8')).toBe('short');
});
