import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import * as untypedCompiler from '@angular/compiler-cli';
import linker from '@angular/compiler-cli/linker/babel';
import type { Plugin } from 'esbuild';
import type ts from 'typescript';
import { bundled } from './example-bundle.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

interface AngularProgram {
  getTsProgram(): ts.Program;
  getNgOptionDiagnostics(): readonly ts.Diagnostic[];
  getNgStructuralDiagnostics(): readonly ts.Diagnostic[];
  getNgSemanticDiagnostics(file: string): readonly ts.Diagnostic[];
  getTsSemanticDiagnostics(file: ts.SourceFile | undefined): readonly ts.Diagnostic[];
  emit(options: {
    emitCallback(asked: {
      readonly program: ts.Program;
      readonly targetSourceFile?: ts.SourceFile;
      readonly writeFile?: ts.WriteFileCallback;
      readonly customTransformers?: ts.CustomTransformers;
    }): ts.EmitResult;
  }): ts.EmitResult;
}

/** What is used of Angular's compiler: its own types name files without their endings, which Node does not find. */
interface AngularCompiler {
  readConfiguration(project: string): { readonly options: ts.CompilerOptions };
  createCompilerHost(given: { readonly options: ts.CompilerOptions }): ts.CompilerHost;
  createProgram(given: {
    readonly rootNames: readonly string[];
    readonly options: ts.CompilerOptions;
    readonly host: ts.CompilerHost;
  }): AngularProgram;
  formatDiagnostics(faults: readonly ts.Diagnostic[], host: ts.CompilerHost): string;
}
const compiler = untypedCompiler as unknown as AngularCompiler;

/** What is used of `@babel/core`, which comes with Angular's compiler and no types. */
interface Babel {
  transformAsync(
    code: string,
    options: Readonly<Record<string, unknown>>,
  ): Promise<{ readonly code: string }>;
}
const compilers = createRequire(
  createRequire(import.meta.url).resolve('@angular/compiler-cli/package.json'),
);
const babel = compilers('@babel/core') as Babel;

/** The example as Angular compiles it ahead of time, its template checked against its class and the elements. */
function compiledExample(path: string): string {
  const { options } = compiler.readConfiguration(`${root}examples/tsconfig.angular.json`);
  const host = compiler.createCompilerHost({ options });
  let made = '';
  host.writeFile = (_, text) => {
    made = text;
  };
  const program = compiler.createProgram({ rootNames: [path], options, host });
  const faults = [
    ...program.getNgOptionDiagnostics(),
    ...program.getNgStructuralDiagnostics(),
    ...program.getTsSemanticDiagnostics(program.getTsProgram().getSourceFile(path)),
    ...program.getNgSemanticDiagnostics(path),
  ];
  if (faults.length > 0) throw new Error(compiler.formatDiagnostics(faults, host));
  program.emit({
    // The rest is esbuild's, which reads the source itself.
    emitCallback: ({ program: all, targetSourceFile: one, writeFile, customTransformers }) =>
      one?.fileName === path
        ? all.emit(one, writeFile, undefined, false, customTransformers)
        : { emitSkipped: true, diagnostics: [] },
  });
  return made;
}

/** Angular's packages come half compiled: what is left would else be compiled in the page, from strings. */
const angular: Plugin = {
  name: 'angular',
  setup(build) {
    build.onLoad({ filter: /[/\\]examples[/\\]angular\.ts$/ }, ({ path }) => ({
      contents: compiledExample(path),
      loader: 'js',
    }));
    build.onLoad({ filter: /[/\\]@angular[/\\].*\.mjs$/ }, async ({ path }) => {
      const code = await readFile(path, 'utf8');
      if (!code.includes('ɵɵngDeclare')) return { contents: code, loader: 'js' };
      const plugins = [linker];
      const linked = await babel.transformAsync(code, {
        plugins,
        filename: path,
        compact: false,
        configFile: false,
        babelrc: false,
      });
      return { contents: linked.code, loader: 'js' };
    });
  },
};

/** Bundles the Angular example as Angular's own builder would, ready for a page that forbids strings as code. */
export const angularBundled = (entry: string): Promise<string> => bundled(entry, [angular]);
