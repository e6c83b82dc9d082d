/**
 * Bundles the desktop shell into out/shell. Two runs, told apart by --mode: `node` for the main and the core process,
 * `preload` for the one file that a sandboxed window may load, which must be CommonJS and require nothing but electron.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type UserConfig } from 'vite';

const outDir = fileURLToPath(new URL('./out/shell', import.meta.url));
const shellFile = (name: string): string => fileURLToPath(new URL(`./electron/${name}`, import.meta.url));

const manifest: { readonly dependencies: Readonly<Record<string, string>> } = JSON.parse(
  readFileSync(new URL('./package.json', import.meta.url), 'utf8'),
);
/** Native code can't be bundled, and pdfkit reads files that lie beside its own. */
const external = ['electron', ...Object.keys(manifest.dependencies)];

/** What runs in Node, each entry a file under its own name. */
export const forNode = (entries: readonly string[]): UserConfig => ({
  publicDir: false,
  build: {
    outDir,
    emptyOutDir: true,
    target: 'node24',
    ssr: true,
    rolldownOptions: {
      input: Object.fromEntries(entries.map((name) => [name, shellFile(`${name}.ts`)])),
      external,
      output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
  ssr: { noExternal: true, external },
});

// With `serveInBrowser` as one file instead of some eight hundred, `npm start` is quick also where the browser is the window.
const node = forNode(['main', 'coreProcess', 'planWorker', 'rehearsalWorker', 'serveInBrowser']);

const preload: UserConfig = {
  publicDir: false,
  build: {
    outDir,
    emptyOutDir: false,
    target: 'chrome140',
    lib: { entry: shellFile('preload.ts'), formats: ['cjs'], fileName: () => 'preload.cjs' },
    rolldownOptions: { external: ['electron'] },
  },
};

export default defineConfig(({ mode }) => (mode === 'preload' ? preload : node));
