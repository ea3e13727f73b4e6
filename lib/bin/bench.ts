import { readdirSync } from 'node:fs'
import type { Bench } from './figure.ts'

// `npm run -s bench [-- NAME…]`: figures as JSON lines on standard output. A name may be a beginning, such as `command/`.
const folder = new URL('../../test/bench/', import.meta.url)
const asked = process.argv.slice(2)
const isWanted = (name: string) => asked.length === 0 || asked.some((a) => name.startsWith(a))

const benches: Bench[] = []
for (const file of readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .sort()) {
  const module: { readonly bench: Bench } = await import(new URL(file, folder).href)
  benches.push(module.bench)
}
const names = benches.flatMap((bench) => bench.names)
const unknown = asked.filter((a) => !names.some((name) => name.startsWith(a)))
if (unknown.length > 0) {
  console.error(
    `fettleyard: no figure is called ${unknown.join(', ')}. There are:\n${names.join('\n')}`,
  )
  process.exit(1)
}
for (const bench of benches) {
  if (!bench.names.some(isWanted)) continue
  for await (const figure of bench.run(isWanted)) {
    if (isWanted(figure.name)) console.log(JSON.stringify(figure))
  }
}
process.exit(0)
