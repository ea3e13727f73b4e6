/** For Debian's Chromium: as root and without a display, quiet towards the network. */
export const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // Its own date fields are written as the page is.
  '--lang=en-GB',
]
