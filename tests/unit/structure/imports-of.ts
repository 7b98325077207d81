import ts from 'typescript';

/** One mention of another module in a source file. */
export interface Import {
  /** As written, without a query such as `?raw`. */
  readonly specifier: string;
  /** Whether only types are taken, so that nothing is left of it when the program runs. */
  readonly typesOnly: boolean;
}

/**
 * Every module that a source file names: imports and exports from elsewhere, imports inside expressions and types, and
 * workers or files named by `new URL('…', import.meta.url)`. Of a Svelte file, its scripts and the imports inside its
 * markup.
 *
 * @param fileName decides how it is read: `.svelte`, else TypeScript
 */
export function importsOf(fileName: string, source: string): Import[] {
  if (!fileName.endsWith('.svelte')) return importsOfScript(source);
  const scripts = /<script\b[^>]*>([\s\S]*?)<\/script>/g;
  const markup = source.replaceAll(scripts, '');
  return [
    ...[...source.matchAll(scripts)].flatMap(([, script = '']) => importsOfScript(script)),
    ...[...markup.matchAll(/\bimport\(\s*(['"`])([^'"`]+)\1/g)].map(([, , specifier = '']) =>
      named(specifier, false)
    )
  ];
}

function importsOfScript(source: string): Import[] {
  const found: Import[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      found.push(named(node.moduleSpecifier.text, takesTypesOnly(node.importClause)));
    } else if (
      ts.isExportDeclaration(node) &&
      node.moduleSpecifier &&
      ts.isStringLiteral(node.moduleSpecifier)
    ) {
      found.push(named(node.moduleSpecifier.text, node.isTypeOnly));
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      if (ts.isStringLiteral(node.argument.literal)) found.push(named(node.argument.literal.text, true));
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      // One that is put together at run time cannot be judged, so it is named as it stands and belongs nowhere.
      const [target] = node.arguments;
      if (target) found.push(named(ts.isStringLiteralLike(target) ? target.text : target.getText(), false));
    } else if (ts.isNewExpression(node) && node.expression.getText() === 'URL') {
      const [target, base] = node.arguments ?? [];
      if (target && ts.isStringLiteralLike(target) && base?.getText() === 'import.meta.url') {
        found.push(named(target.text, false));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest, true));
  return found;
}

function takesTypesOnly(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const { name, namedBindings } = clause;
  return (
    name === undefined &&
    namedBindings !== undefined &&
    ts.isNamedImports(namedBindings) &&
    namedBindings.elements.length > 0 &&
    namedBindings.elements.every((element) => element.isTypeOnly)
  );
}

function named(specifier: string, typesOnly: boolean): Import {
  return { specifier: specifier.replace(/\?.*$/, ''), typesOnly };
}
