/**
 * What the running server offers to the pages. Next bundles its own copy of every module, so pages reach pools, lanes
 * and sockets only through these functions, which the server put on `globalThis`. Import nothing but types here.
 */
export type ForPages = {
  readonly version: string
}

declare global {
  // `var` is what makes it a property of globalThis.
  var fettleyard: ForPages | undefined
}

/** Called once by the server, before the first page is served. */
export function provideForPages(functions: ForPages): void {
  globalThis.fettleyard = functions
}

/** The running server's functions. */
export function forPages(): ForPages {
  const functions = globalThis.fettleyard
  if (functions === undefined) throw new Error('Pages are served by lib/server/main.ts only.')
  return functions
}
