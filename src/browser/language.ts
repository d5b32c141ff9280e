/**
 * The device's language as a tag that dates and numbers can be written in.
 * @param said - what the browser says; on a machine without a language it may be no tag at all ("en-US@posix")
 * @returns the tag, the sound part of it, or "en"
 */
export function languageTag(said: string): string {
  for (const tag of [said, /^[A-Za-z]{2,3}(?:-[A-Za-z]{2})?/.exec(said)?.[0] ?? 'en', 'en'])
    try {
      return Intl.getCanonicalLocales(tag)[0] ?? 'en';
    } catch {}
  return 'en';
}
