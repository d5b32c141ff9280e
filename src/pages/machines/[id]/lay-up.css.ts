import type { APIRoute } from 'astro';
import { format } from '../../../site/format.ts';
import { machineOf, machinePaths } from '../../../site/season.ts';
import { sheetMargins } from '../../../site/show/sheet.ts';

export const getStaticPaths = machinePaths;
export const GET: APIRoute = ({ params }) =>
  new Response(sheetMargins(machineOf(params.id as string), 'lay-up', format));
