/** The bundled procedures as the planner takes them, read once at build time. */
import { join } from 'node:path';
import type { APIRoute } from 'astro';
import { readFiles } from '../../content/read-folder.ts';
import { readProcedures } from '../../content/read-procedures.ts';

export const GET: APIRoute = () => {
  const { files } = readFiles(join(process.cwd(), 'content', 'procedures'));
  const { procedures, problems } = readProcedures(files.map((f) => ({ ...f, path: `procedures/${f.path}` })));
  if (problems.length > 0) throw new Error(`content/procedures: ${problems[0]!.file}: ${problems[0]!.what}`);
  return new Response(JSON.stringify(procedures), { headers: { 'content-type': 'application/json' } });
};
