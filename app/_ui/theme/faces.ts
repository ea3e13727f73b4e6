import localFont from 'next/font/local'

/** Everything but numbers, plates and stamps. */
export const textFace = localFont({
  variable: '--face-text',
  display: 'swap',
  src: [
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
      weight: '400',
    },
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff2',
      weight: '600',
    },
    {
      path: '../../../node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-800-normal.woff2',
      weight: '800',
    },
  ],
})

/** Numbers, plates, section heads and stamps, from 16 px up. */
export const stencilFace = localFont({
  variable: '--face-stencil',
  display: 'swap',
  // It has one weight; headings that ask for more must not get it smeared.
  src: '../../../node_modules/@fontsource/saira-stencil-one/files/saira-stencil-one-latin-400-normal.woff2',
  weight: '400 900',
})
