/** Builds the window's page into out/renderer. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: fileURLToPath(new URL('./renderer', import.meta.url)),
  // Works from app://, from loopback HTTP and from any folder.
  base: './',
  plugins: [react()],
  build: {
    outDir: fileURLToPath(new URL('./out/renderer', import.meta.url)),
    emptyOutDir: true,
    target: 'chrome140',
    // The page's policy allows no data: addresses, so nothing is folded into code as one.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // A local disk, not a network: one large file is no harm.
    chunkSizeWarningLimit: 4_000,
  },
});
