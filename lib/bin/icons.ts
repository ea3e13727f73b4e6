import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium as browser } from '@playwright/test'
import { chromium } from './chromium.ts'
import { root, Stop, say } from './prepare.mjs'

// `npm run icons`: the icons of an installed Fettleyard, drawn anew from `public/icons/card.svg`.

/** What is cut out of the drawing: close round the card, or with what a launcher's mask may take away left round it. */
const CLOSE = '40 16 432 432'
const MASKED = '-45 -61 602 602'

const ICONS = [
  { file: 'public/icons/card-192.png', side: 192, cut: CLOSE },
  { file: 'public/icons/card-512.png', side: 512, cut: CLOSE },
  { file: 'public/icons/card-maskable-512.png', side: 512, cut: MASKED },
  { file: 'app/apple-icon.png', side: 180, cut: CLOSE },
] as const

try {
  await draw(await chromium())
} catch (error) {
  if (!(error instanceof Stop)) throw error
  say(error.message)
  process.exitCode = 1
}

async function draw(executablePath: string): Promise<void> {
  const drawing = readFileSync(join(root, 'public/icons/card.svg'), 'utf8')
  const args = ['--headless', '--no-sandbox', '--disable-gpu', '--force-color-profile=srgb']
  const open = await browser.launch({ executablePath, args })
  try {
    for (const { file, side, cut } of ICONS) {
      const page = await open.newPage({ viewport: { width: side, height: side } })
      const cutOut = drawing.replace(/viewBox="[^"]+"/, `viewBox="${cut}" style="display:block"`)
      await page.setContent(`<body style="margin:0">${cutOut}`)
      writeFileSync(join(root, file), await page.screenshot())
      await page.close()
      say(`${file}, ${side} px.`)
    }
  } finally {
    await open.close()
  }
}
