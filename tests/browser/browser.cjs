// SPDX-License-Identifier: MIT
// What the tests in a browser share: the installed Chromium without a network, checks told as TAP.
'use strict';
const { chromium } = require('playwright-core');

let count = 0, failed = 0;

function check(good, what, why) {
  count += 1;
  failed += good ? 0 : 1;
  console.log(`${good ? 'ok' : 'not ok'} ${count} - ${what}`);
  if (!good && why !== undefined) { console.log('# ' + (typeof why === 'string' ? why : JSON.stringify(why)).replace(/\n/g, '\n# ')); }
  return good;
}

// A number for people, nothing that can fail.
function figure(what) { console.log('# ' + what); }

function finish() {
  console.log(`1..${count}`);
  process.exitCode = failed || count === 0 ? 1 : 0;
}

function start() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync'],
  });
}

// A page that may ask for nothing but what `allow` says; whatever else it asks for, and every error, is kept.
async function open(browser, address, options, allow) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  page.asked = [];
  page.errors = [];
  await context.route('**/*', (route) => {
    if (allow(route.request().url())) { return route.continue(); }
    page.asked.push(route.request().url());
    return route.abort();
  });
  page.on('pageerror', (error) => page.errors.push(error.message));
  page.on('console', (said) => { if (said.type() === 'error' || said.type() === 'warning') { page.errors.push(said.text()); } });
  await page.goto(address);
  return page;
}

// Asks until it is so: the page's own policy lets no waiting inside it be written.
async function until(page, question, word) {
  for (let i = 0; i < 600; i++) {
    if (await page.evaluate(question, word)) { return; }
    await page.waitForTimeout(25);
  }
  throw new Error(`it never came to this: ${question} ${word === undefined ? '' : word}`);
}

// What axe-core says against the page, in a line each.
async function faults(page) {
  const axe = require('axe-core');
  await page.evaluate(axe.source);
  const result = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
  return result.violations.map((fault) => `${fault.id}: ${fault.nodes.length} x ${fault.help}: ${fault.nodes[0].target} ${fault.nodes[0].any.map((one) => one.message)}`);
}

module.exports = { check, figure, finish, start, open, until, faults };
