import type { APIRoute } from 'astro';
import { machineOf, machinePaths } from '../../../site/season.ts';
import { marginStyle } from '../../../site/sheet.ts';

export const getStaticPaths = machinePaths;
export const GET: APIRoute = ({ params }) => new Response(marginStyle(machineOf(params.id as string), 'start-up'));
