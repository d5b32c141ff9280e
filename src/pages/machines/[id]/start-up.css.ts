import type { APIRoute } from 'astro';
import { machinePaths, machinePlan } from '../../../site/season.ts';
import { marginStyle } from '../../../site/sheet.ts';

export const getStaticPaths = machinePaths;
export const GET: APIRoute = ({ params }) => new Response(marginStyle(machinePlan(params.id as string), 'start-up'));
