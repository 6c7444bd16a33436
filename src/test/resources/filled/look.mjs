// Opens a PDF in Chromium's viewer and takes its picture: node look.mjs CHROMIUM FILE.pdf OUT.png
// Whatever the browser complains about is printed.
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
await page.waitForTimeout(3000);
await page.screenshot({ path: picture });
await browser.close();
