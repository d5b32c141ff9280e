/** A check that tags are balanced and attributes quoted: enough to catch what string building gets wrong. */
export function wellFormed(text: string): string {
  const open: string[] = [];
  let at = 0;
  for (const match of text.matchAll(/<(\/?)([a-zA-Z][\w-]*)((?:\s+[\w:-]+="[^"<]*")*)(\/?)>/g)) {
    if (text.slice(at, match.index).includes('<')) return `stray "<" near ${text.slice(at, match.index + 20)}`;
    at = match.index + match[0].length;
    const [, end, name, , empty] = match;
    if (end && open.pop() !== name) return `</${name}> closes nothing`;
    if (!end && !empty) open.push(name!);
  }
  if (text.slice(at).includes('<')) return 'stray "<" at the end';
  return open.length === 0 ? 'well formed' : `never closed: ${open}`;
}
