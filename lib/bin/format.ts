import { passes } from './steps.ts'

// `npm run format`: layout, import order and whatever else has one right form.
const done = await passes({ name: 'format', command: 'biome', args: ['check', '--write', '.'] })
process.exitCode = done ? 0 : 1
