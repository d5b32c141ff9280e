/** `npm start -- --content ../my-garage`: plans and builds the household, then serves the site and prints its address. */
import { preview } from 'astro';
import { PROJECT, siteFolder } from './paths.ts';

await import('./build.ts');
const server = await preview({
  root: PROJECT,
  outDir: siteFolder(),
  logLevel: 'error',
  server: { port: Number(process.env.PORT ?? 4321), host: process.env.HOST ?? 'localhost' },
});
console.log(`Serving it on http://${server.host ?? 'localhost'}:${server.port}/ (Ctrl+C ends it)`);
await server.closed();
