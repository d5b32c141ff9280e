/** Ids: what may be one, and one made from any text. Apart from the schemas, since forms make them too. */

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

export const ID_RULE = 'small letters a–z, digits and single hyphens, at most 60';

/** True where text may be an id: it becomes part of file names and page addresses. */
export function isId(text: string): boolean {
  return ID.test(text) && text.length <= 60;
}

/** Names of devices on Windows, where no file or folder can be called so: Microsoft, Naming Files, Paths, and Namespaces. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** True for an id that cannot be the name of a file everywhere. */
export const isDeviceName = (id: string): boolean => DEVICE.test(id);

/** An id made from any text; "" where no letter or digit is left. */
export function idFrom(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cf}]/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
}

/** The id of a machine made from any text. */
export function slug(text: string): string {
  const id = idFrom(text) || 'machine';
  return isDeviceName(id) ? `${id}-1` : id;
}
