/** Signs that cannot stand where they do: told, and put right, so that the rest of the file is read in the same run. */
import { CST, LineCounter, Parser } from 'yaml';
import { codeOf } from './problem.ts';
import { placeIn, type TextFault } from './text.ts';

/** Faults of one file that are told. */
const MOST_TOLD = 20;

/** @returns the text as it was meant, with its lines as they were; and what is wrong with it */
export function withoutSigns(text: string): { text: string; faults: TextFault[] } {
  const controls = [...text.matchAll(/(?![\t\n])\p{Cc}/gu)];
  const plain = controls.length > 0 ? text.replace(/(?![\t\n])\p{Cc}/gu, '') : text;
  const indents = indentFaults(plain);
  const faults: TextFault[] = [
    ...controls.slice(0, MOST_TOLD).map(
      ({ 0: sign, index }): TextFault => ({
        ...placeIn(text, index),
        what: `found the control character ${codeOf(sign)}, expected printable text`,
        fix: 'Delete that character.',
      }),
    ),
    ...indents.slice(0, MOST_TOLD).map(({ sign: _, ...fault }) => fault),
  ];
  if (indents.length === 0) return { text: plain, faults };
  const rows = plain.split('\n');
  for (const { line } of indents)
    rows[line - 1] = rows[line - 1]!.replace(/^[ \t\u00a0\u2000-\u200b\u202f\u3000]+/, (indent) =>
      indent.replaceAll('\t', '  ').replace(/[^ ]/g, ' '),
    );
  return { text: rows.join('\n'), faults };
}

/** Lines indented by anything but spaces; within quotes or a block of text that is part of the text. */
function indentFaults(text: string): (TextFault & { sign: string })[] {
  const suspect = text.split('\n').flatMap((line, i) => {
    const tab = /^ *([\t\u00a0\u2000-\u200b\u202f\u3000])/u.exec(line);
    return tab && line.trim() !== '' ? [{ line: i + 1, column: tab[0].length, sign: tab[1]! }] : [];
  });
  if (suspect.length === 0) return [];
  const inText = linesWithinText(text);
  return suspect
    .filter(({ line }) => !inText.has(line))
    .map(({ line, column, sign }) => ({
      line,
      column,
      sign,
      what: `found ${sign === '\t' ? 'a tab' : `a space of another kind (${codeOf(sign)})`} before the text, expected spaces`,
      fix: sign === '\t' ? 'Indent with two spaces for each level.' : 'Delete it, and type the spaces on the keyboard.',
    }));
}

/** Numbers of the lines that begin within a quoted value or a block of text. */
function linesWithinText(text: string): Set<number> {
  const lines = new LineCounter();
  const within = new Set<number>();
  const look = (token: CST.Token | null | undefined) => {
    if (!token || !('source' in token) || !/^(?:double-quoted|single-quoted|block)-scalar$/.test(token.type)) return;
    const head = token.type === 'block-scalar' ? token.props.map((part) => ('source' in part ? part.source : '')) : [];
    const first = lines.linePos(token.offset).line;
    const last = lines.linePos(token.offset + head.join('').length + token.source.length - 1).line;
    for (let line = first + 1; line <= last; line++) within.add(line);
  };
  for (const token of new Parser(lines.addNewLine).parse(text))
    if (token.type === 'document')
      CST.visit(token, ({ key, value }) => {
        look(key);
        look(value);
      });
  return within;
}
