/** Ids: what may be one, and one made from any text. Apart from the schemas, since forms make them too. */

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

export const ID_RULE = 'small letters a–z, digits and single hyphens, at most 60';

/** True where text may be an id: it becomes part of file names and page addresses. */
export function isId(text: string): boolean {
  return ID.test(text) && text.length <= 60;
}

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
  return idFrom(text) || 'machine';
}
