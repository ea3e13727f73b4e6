import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const ROOT = fileURLToPath(new URL('../', import.meta.url))

/** A folder of lib imports from itself and from folders with a lower number: never up, never across. */
const LEVEL: Readonly<Record<string, number>> = {
  record: 1,
  shop: 2,
  custody: 2,
  parts: 2,
  money: 2,
  sums: 3,
  coating: 3,
  gate: 4,
  'build-order': 5,
  plan: 5,
  library: 6,
  see: 6,
  words: 6,
  journal: 6,
  book: 6,
  command: 7,
  live: 8,
  server: 8,
  bin: 8,
}

/** The last level that is pure: the same on the phone and on the server. */
const PURE = 7

/** All that pure code may load from outside: no clock, no random, no I/O. */
const PURE_PACKAGES: readonly RegExp[] = [
  /^zod\/mini$/,
  /^@noble\/hashes(\/|$)/,
  // Text to cells, and the nearest name to a mistyped one.
  /^csv-parse\/browser\/esm\/sync$/,
  /^fastest-levenshtein$/,
  // Decimal arithmetic.
  /^big\.js$/,
]

/** The one file of the server that pages may load. */
const FOR_PAGES = 'lib/server/for-pages.ts'

type Import = { readonly from: string; readonly to: string; readonly typeOnly: boolean }

const files = [...sources('app'), ...sources('lib'), ...sources('seed')]
const imports = files.flatMap(importsOf)
const loads = new Map(
  files.map((file) => [
    file,
    imports.filter(({ from, typeOnly }) => from === file && !typeOnly).map(({ to }) => to),
  ]),
)

describe('the dependency rule', () => {
  it('has read what it judges', () => {
    expect(files.length).toBeGreaterThan(50)
    expect(imports.filter(({ from }) => from.startsWith('lib/')).length).toBeGreaterThan(50)
    expect(imports.filter(({ from }) => from.startsWith('app/')).length).toBeGreaterThan(5)
    expect(imports.some(({ to }) => to === 'zod/mini')).toBe(true)
    expect(imports.some(({ to }) => to.startsWith('lib/record/'))).toBe(true)
  })

  it('knows the number of every folder of lib', () => {
    expect(readdirSync(join(ROOT, 'lib')).filter((folder) => LEVEL[folder] === undefined)).toEqual(
      [],
    )
  })

  it('lets lib import from the same folder or a lower number', () => {
    expect(broken(({ from, to }) => isUpOrAcross(from, to))).toEqual([])
  })

  it('keeps app, seed, tests and their tools out of lib', () => {
    const outside = /^(app|seed|test|e2e)\//
    expect(
      broken(
        ({ from, to }) =>
          levelOf(from) <= 7 && !isTest(from) && outside.test(to) && !isSeeding(from, to),
      ),
    ).toEqual([])
  })

  it('lets pure folders load nothing from outside but zod/mini and the named pure packages', () => {
    expect(
      broken(
        ({ from, to }) =>
          levelOf(from) <= PURE &&
          !isTest(from) &&
          !isOurs(to) &&
          !PURE_PACKAGES.some((allowed) => allowed.test(to)),
      ),
    ).toEqual([])
  })

  it('lets pages reach the server through for-pages.ts only, and browser code not even that', () => {
    expect(
      broken(
        ({ from, to, typeOnly }) =>
          from.startsWith('app/') &&
          to.startsWith('lib/server/') &&
          (to !== FOR_PAGES || (isClient(from) && !typeOnly)),
      ),
    ).toEqual([])
  })

  it('lets for-pages.ts load nothing of the server, so that pages needn’t be built again when that changes', () => {
    expect(
      broken(
        ({ from, to, typeOnly }) => from === FOR_PAGES && to.startsWith('lib/server/') && !typeOnly,
      ),
    ).toEqual([])
  })

  it('keeps the database out of pages', () => {
    expect(
      broken(({ from, to }) => from.startsWith('app/') && /^(pg|@?prisma)(\/|$)/.test(to)),
    ).toEqual([])
  })

  it('keeps the server out of what a phone loads', () => {
    expect(
      broken(({ from, to }) => from.startsWith('lib/live/') && /^(node:|pg$)/.test(to)),
    ).toEqual([])
  })

  it('lets no file load itself round a corner', () => {
    expect(files.map((file) => roundTo(file)).filter((path) => path !== null)).toEqual([])
  })

  it('would see a forbidden import', () => {
    expect(isUpOrAcross('lib/gate/start.ts', 'lib/plan/plan.ts')).toBe(true)
    expect(isUpOrAcross('lib/shop/slot.ts', 'lib/money/totals.ts')).toBe(true)
    expect(isUpOrAcross('lib/gate/start/custody.ts', 'lib/record/ids.ts')).toBe(false)
  })
})

/** Seeding is the server's and its scripts' business. */
function isSeeding(from: string, to: string): boolean {
  return levelOf(from) === 7 && !from.startsWith('lib/live/') && to.startsWith('seed/')
}

/** The shortest way by which a file comes to load itself, types apart; null where it doesn't. */
function roundTo(file: string): string | null {
  const cameFrom = new Map<string, string>()
  const next = [file]
  for (const from of next) {
    for (const to of loads.get(from) ?? []) {
      if (cameFrom.has(to)) continue
      cameFrom.set(to, from)
      next.push(to)
    }
  }
  if (!cameFrom.has(file)) return null
  const way = [file]
  for (let at = cameFrom.get(file); at !== undefined && at !== file; at = cameFrom.get(at))
    way.unshift(at)
  return [file, ...way].join(' > ')
}

function isUpOrAcross(from: string, to: string): boolean {
  const [here, there] = [folderOf(from), folderOf(to)]
  return here !== undefined && there !== undefined && here !== there && levelOf(to) >= levelOf(from)
}

function folderOf(file: string): string | undefined {
  return /^lib\/([^/]+)\//.exec(file)?.[1]
}

function levelOf(file: string): number {
  return LEVEL[folderOf(file) ?? ''] ?? Number.POSITIVE_INFINITY
}

function isOurs(target: string): boolean {
  return /^(app|lib|seed|test|e2e|package\.json)(\/|$)/.test(target)
}

function isTest(file: string): boolean {
  return /\.test\.tsx?$/.test(file)
}

function isClient(file: string): boolean {
  return /^\s*['"]use client['"]/.test(readFileSync(join(ROOT, file), 'utf8'))
}

function broken(rule: (each: Import) => boolean): readonly string[] {
  return imports.filter(rule).map(({ from, to }) => `${from} imports ${to}`)
}

function sources(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((file) => /\.(tsx?|mjs)$/.test(file) && !file.startsWith('lib/server/generated/'))
    .filter((file) => statSync(join(ROOT, file)).isFile())
}

/** Every import, export-from and `import()` of a file, its target a path from the root or a package's name. */
function importsOf(from: string): readonly Import[] {
  const text = readFileSync(join(ROOT, from), 'utf8')
  const tree = ts.createSourceFile(from, text, ts.ScriptTarget.Latest, true)
  const found: Import[] = []
  const add = (node: ts.Node | undefined, typeOnly: boolean) => {
    if (node !== undefined && ts.isStringLiteralLike(node)) {
      found.push({ from, to: target(from, node.text), typeOnly })
    }
  }
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      add(node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword)
    }
    if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly)
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal, true)
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0], false)
    }
    ts.forEachChild(node, visit)
  }
  visit(tree)
  return found
}

function target(from: string, specifier: string): string {
  if (specifier.startsWith('@/')) return specifier.slice(2)
  if (!specifier.startsWith('.')) return specifier
  return relative(ROOT, join(ROOT, dirname(from), specifier)).replaceAll('\\', '/')
}
