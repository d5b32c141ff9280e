/** Text as it stands where YAML cannot misread it, else in double quotes. */
export function scalar(text: string): string {
  const plain =
    /^[A-Za-zÀ-ɏ][\wÀ-ɏ ./·°%-]*$|^-?\d+(?:[.,]\d+)? ?[A-Za-zµ°·%/²]+(?: [A-Za-z]+)?$/u.test(text) && !/\s$/.test(text);
  const word = /^(?:true|false|null|yes|no|on|off|y|n|inf|nan|\d{4}-.*)$/i.test(text);
  return plain && !word
    ? text
    : JSON.stringify(text).replace(/\u2028|\u2029/g, (c) => `\\u${c.charCodeAt(0).toString(16)}`);
}
