import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  kit: {
    adapter: adapter({ pages: 'build', assets: 'build', strict: true }),
    alias: { $sheets: 'sheets', '$sheets/*': 'sheets/*' },
    // Relative addresses let the same build run from any sub-path of a plain static server.
    paths: { relative: true },
    typescript: {
      // Kit's generated file lists only src and tests; the sheets live at the top level.
      config: (config) => {
        config.include.push('../sheets/**/*.ts', '../sheets/**/*.svelte', '../*.config.ts');
        return config;
      },
    },
  },
};
