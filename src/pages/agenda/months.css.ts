import type { APIRoute } from 'astro';
import { pageMargins } from '../../site/page-margins.ts';
import { season } from '../../site/season.ts';
import { WORDS } from '../../site/words.ts';

export const GET: APIRoute = () =>
  new Response(pageMargins(season.household.name, WORDS.agenda.monthsTitle, 'landscape'));
