import type { BuildOptions } from 'esbuild';

export declare const nodeBundle: BuildOptions;
