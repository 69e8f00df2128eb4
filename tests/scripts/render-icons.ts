/**
 * Draws the icons of the installed page from public/icon.svg: `npx tsx tests/scripts/render-icons.ts`. The maskable one has the drawing within
 * the middle four fifths, on its own ground to the edge (Web Application Manifest, "maskable").
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser } from './find-browser';

const ICONS = [
  { file: 'icon-180.png', size: 180, share: 1, ground: '#f6f0e4' },
  { file: 'icon-192.png', size: 192, share: 1, ground: 'transparent' },
  { file: 'icon-512.png', size: 512, share: 1, ground: 'transparent' },
  { file: 'icon-maskable-512.png', size: 512, share: 0.8, ground: '#f6f0e4' },
];

mkdirSync('public/icons', { recursive: true });
const drawing = `data:image/svg+xml;base64,${readFileSync('public/icon.svg').toString('base64')}`;
const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGUMENTS });
for (const { file, size, share, ground } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const side = Math.round(size * share);
  await page.setContent(
    `<body style="margin:0;background:${ground};display:grid;place-content:center;height:100vh"><img width=${side} height=${side} src="${drawing}">`,
  );
  await page.screenshot({ path: `public/icons/${file}`, omitBackground: ground === 'transparent' });
  await page.close();
}
await browser.close();
