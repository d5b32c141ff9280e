import { defineConfig } from 'astro/config';

// Everything the site shows is worked out before the build; the build fetches nothing and the pages load nothing from
// other hosts. Scripts and styles are files, never inline, so that the content security policy can forbid inline code.
export default defineConfig({
  output: 'static',
  outDir: process.env.IDLE_OUT ?? 'dist',
  compressHTML: true,
  build: { inlineStylesheets: 'never', format: 'directory' },
  devToolbar: { enabled: false },
  vite: {
    build: { assetsInlineLimit: 0 },
    // No module of the planner or of its libraries does anything by being imported: what a chunk does not use, it does not carry.
    worker: { format: 'es', rolldownOptions: { treeshake: { moduleSideEffects: false } } },
  },
});
