/** Reads an archive of stored files by its central directory. Source: PKWARE APPNOTE 6.3.10, 4.3.7, 4.3.12, 4.3.16. */
export function unzip(archive: Buffer): { path: string; bytes: Buffer }[] {
  const end = archive.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  const count = archive.readUInt16LE(end + 10);
  let at = archive.readUInt32LE(end + 16);
  return Array.from({ length: count }, () => {
    const [size, name, extra, comment] = [
      archive.readUInt32LE(at + 20),
      archive.readUInt16LE(at + 28),
      archive.readUInt16LE(at + 30),
      archive.readUInt16LE(at + 32),
    ];
    const local = archive.readUInt32LE(at + 42);
    const from = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
    const path = archive.subarray(at + 46, at + 46 + name).toString('utf8');
    at += 46 + name + extra + comment;
    return { path, bytes: archive.subarray(from, from + size) };
  });
}
