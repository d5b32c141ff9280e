import type { APIRoute } from 'astro';
import { season } from '../../site/season.ts';
import { pageMargins } from '../../site/sheet.ts';
import { WORDS } from '../../site/words.ts';

export const GET: APIRoute = () =>
  new Response(pageMargins(season.household.name, WORDS.agenda.rounds.title, 'landscape'));
