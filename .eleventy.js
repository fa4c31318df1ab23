// Eleventy on Node 20 reads no TypeScript: this hands it eleventy.config.ts.
import { tsImport } from 'tsx/esm/api';

const { default: configure } = await tsImport('./eleventy.config.ts', import.meta.url);
export default configure;
