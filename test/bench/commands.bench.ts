import { against, type Bench, type Figure, median, quantile } from '../../lib/bin/figure.ts'
import { latencies, throughput } from './load.ts'
import { type Rivals, withRivals } from './rivals.ts'

/** Clients who each wait for their answer before they press again. */
const CLIENTS = 32
const TURNS = 3
const TURN_MS = 4000
const WARM_MS = 1500
/** Offered load for the latencies, of what the slower of the two gets through. */
const LOAD = 0.6
/** Turns of latency; the middle one counts: where the machine's disk or others stand still, it says nothing of either server. */
const LATENCY_TURNS = 9
const LATENCY_TURN_MS = 2000

export const bench: Bench = {
  names: [1, 50].flatMap((count) => {
    const name = nameOf(count)
    return [name, `${name}-p50`, `${name}-p99`]
  }),
  async *run(isWanted) {
    for (const count of [1, 50]) {
      const name = nameOf(count)
      if (![name, `${name}-p50`, `${name}-p99`].some(isWanted)) continue
      for (const figure of await withRivals(count, (rivals) => measure(name, rivals))) yield figure
    }
  },
}

function nameOf(projects: number): string {
  return projects === 1 ? 'command/1-project' : `command/${projects}-projects`
}

async function measure(name: string, { ours, plain }: Rivals): Promise<Figure[]> {
  for (const { port, next } of [ours, plain]) await throughput(port, CLIENTS, next, WARM_MS)
  const rates: { ours: number[]; plain: number[] } = { ours: [], plain: [] }
  for (let turn = 0; turn < TURNS; turn++) {
    rates.ours.push(await throughput(ours.port, CLIENTS, ours.next, TURN_MS))
    rates.plain.push(await throughput(plain.port, CLIENTS, plain.next, TURN_MS))
  }
  const [value, baseline] = [median(rates.ours), median(rates.plain)]
  const load = Math.min(value, baseline) * LOAD
  const took: { ours: number[][]; plain: number[][] } = { ours: [], plain: [] }
  for (let turn = 0; turn < LATENCY_TURNS; turn++) {
    took.ours.push(await latencies(ours.port, load, ours.next, LATENCY_TURN_MS))
    took.plain.push(await latencies(plain.port, load, plain.next, LATENCY_TURN_MS))
  }
  const latency = (suffix: string, part: number) => {
    const middle = (turns: number[][]) => median(turns.map((ms) => quantile(ms, part)))
    return against(`${name}-${suffix}`, 'ms', 'lower', middle(took.ours), middle(took.plain))
  }
  return [
    against(name, '1/s', 'higher', value, baseline),
    latency('p50', 0.5),
    latency('p99', 0.99),
  ]
}
