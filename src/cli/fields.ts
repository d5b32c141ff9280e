/**
 * `npm run fields`: the field reference of the content files, as text.
 * `npm run fields -- --write`: writes the editors' schemas into public/schemas/.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { editorSchema, type FileKind, fieldRows, KINDS_OF_FILES } from '../content/fields.ts';
import { PROJECT, readCommandLine } from './paths.ts';

const kinds = Object.keys(KINDS_OF_FILES) as FileKind[];

if (readCommandLine([], { write: { type: 'boolean' } }).values.write) {
  const folder = join(PROJECT, 'public', 'schemas');
  mkdirSync(folder, { recursive: true });
  for (const kind of kinds) {
    writeFileSync(join(folder, `${kind}.schema.json`), `${JSON.stringify(editorSchema(kind), null, 1)}\n`);
  }
  console.log(`${kinds.length} schemas written into public/schemas/`);
} else {
  for (const kind of kinds) {
    console.log(`\n${KINDS_OF_FILES[kind].path}`);
    for (const row of fieldRows(kind)) {
      console.log(`  ${row.field}${row.required ? ' (needed)' : ''}`);
      console.log(
        `      ${row.meaning}${row.meaning === '' ? '' : '. '}${row.form}${row.example === '' ? '' : `. Example: ${row.example}`}`,
      );
    }
  }
}
