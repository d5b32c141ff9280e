/** The margins of the printed sheets. */
import type { APIRoute } from 'astro';
import { format } from '../../../site/format.ts';
import { type MachineInBrief, season } from '../../../site/season.ts';
import { SHEETS, type SheetKind } from '../../../site/sheet-lists.ts';
import { sheetMargins } from '../../../site/show/sheet.ts';

interface Props {
  machine: MachineInBrief;
  sheet: SheetKind;
}

export const getStaticPaths = () =>
  season.machines.flatMap((machine) =>
    SHEETS.map((sheet) => ({ params: { id: machine.id, sheet }, props: { machine, sheet } satisfies Props })),
  );
export const GET: APIRoute<Props> = ({ props: { machine, sheet } }) =>
  new Response(sheetMargins(machine, sheet, format));
