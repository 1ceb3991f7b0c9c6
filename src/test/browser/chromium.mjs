// Debian's Chromium, without its calls home.

import { chromium } from 'playwright-core';

export const base = process.env.TUNSIDE || 'http://localhost:8080';

export function launched() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync'],
  });
}

/** How many pages a page prints on, and the print. */
export async function printed(page, format, path) {
  const pdf = (await page.pdf({ format, path })).toString('latin1');
  return Number(/\/Type \/Pages\b[^>]*?\/Count (\d+)/.exec(pdf)?.[1]);
}
