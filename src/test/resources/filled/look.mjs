// Opens a PDF in Chromium's viewer and takes its picture: node look.mjs CHROMIUM FILE.pdf OUT.png
// Whatever the browser complains about is printed.
import { writeFile } from 'node:fs/promises';
import { chromium } from 'playwright-core';

const [program, file, picture] = process.argv.slice(2);
const browser = await chromium.launch({
  executablePath: program,
  headless: true,
  ignoreDefaultArgs: ['--headless', '--headless=old'],
  args: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});
const page = await browser.newPage({ viewport: { width: 800, height: 1200 } });
page.on('console', (message) => {
  if (['warning', 'error'].includes(message.type())) {
    console.log(message.type() + ': ' + message.text());
  }
});
page.on('pageerror', (error) => console.log('error: ' + error));
await page.goto('file://' + file + '#toolbar=0&navpanes=0');
// Drawn is what stays the same for a while and is more than an even ground, which packs to next to nothing.
let last = Buffer.alloc(0);
for (let i = 0; i < 60; i++) {
  await page.waitForTimeout(1000);
  const now = await page.screenshot();
  if (now.length > 10000 && now.equals(last)) {
    break;
  }
  last = now;
}
await writeFile(picture, last);
await browser.close();
