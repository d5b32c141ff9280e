/**
 * Some small text files as one archive, stored without compression.
 *
 * Source: PKWARE .ZIP File Format Specification (APPNOTE) 6.3.10, sections 4.3.7 (local header), 4.3.12 (central directory),
 * 4.3.16 (end record); general purpose bit 11 says that names are UTF-8 (4.4.4).
 */

/** CRC-32 of ISO 3309, reflected polynomial EDB88320. */
function crc32(bytes: Uint8Array): number {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

/** 1 January 1980, 00:00: the format's own zero, so that the same files give the same bytes. */
const DATE = 0x21;
const UTF8 = 0x800;

/**
 * An archive.
 * @param files - paths with forward slashes, and contents
 * @returns the archive's bytes
 */
export function zip(files: readonly { path: string; bytes: Uint8Array }[]): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  const central: Uint8Array[] = [];
  let offset = 0;
  for (const { path, bytes } of files) {
    const name = new TextEncoder().encode(path);
    const crc = crc32(bytes);
    const common = [20, UTF8, 0, 0, DATE]
      .map(two)
      .concat([four(crc), four(bytes.length), four(bytes.length), two(name.length), two(0)]);
    const local = joined([four(0x04034b50), ...common, name, bytes]);
    central.push(joined([four(0x02014b50), two(20), ...common, two(0), two(0), two(0), four(0), four(offset), name]));
    parts.push(local);
    offset += local.length;
  }
  const directory = joined(central);
  const end = [
    four(0x06054b50),
    two(0),
    two(0),
    two(files.length),
    two(files.length),
    four(directory.length),
    four(offset),
    two(0),
  ];
  return joined([...parts, directory, ...end]);
}

const two = (n: number) => Uint8Array.of(n & 255, (n >> 8) & 255);
const four = (n: number) => Uint8Array.of(n & 255, (n >>> 8) & 255, (n >>> 16) & 255, (n >>> 24) & 255);

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(parts.reduce((sum, p) => sum + p.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}
