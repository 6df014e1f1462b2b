// SPDX-License-Identifier: MIT
// What the tests in a browser share: the installed Chromium without a network, a folder, checks told as TAP.
'use strict';
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { chromium } = require('playwright-core');

let count = 0, failed = 0;

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'courtwright-browser-')); // is gone when the test is over

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

function start(...more) {
  return chromium.launch({
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync', ...more],
  });
}

// A whole test, of a browser: whatever it throws is told, and nothing is left of it.
async function run(test) {
  let browser = null;
  try {
    browser = await start();
    await test(browser);
  } catch (thrown) {
    check(false, 'it comes to its end', String(thrown.stack));
  }
  if (browser) { await browser.close(); }
  fs.rmSync(folder, { recursive: true });
  finish();
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

// Asks until there is an answer, and gives it; null: there never was one.
async function eventually(question) {
  for (const end = Date.now() + 20000; Date.now() < end; await new Promise((go) => setTimeout(go, 25))) {
    const answer = await question();
    if (answer) { return answer; }
  }
  return null;
}

// Asks a page until it is so: its own policy lets no waiting inside it be written.
async function until(page, question, word) {
  if (!await eventually(() => page.evaluate(question, word))) {
    throw new Error(`it never came to this: ${question} ${word === undefined ? '' : word}`);
  }
}

// The page to write in has drawn something.
const pictured = (page) => until(page, () => Number(document.documentElement.dataset.shown || 0) > 0);

// What axe-core says against the page, in a line each.
async function faults(page) {
  const axe = require('axe-core');
  await page.evaluate(axe.source);
  const result = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
  return result.violations.map((fault) => `${fault.id}: ${fault.nodes.length} x ${fault.help}: ${fault.nodes[0].target} ${fault.nodes[0].any.map((one) => one.message)}`);
}

module.exports = { check, figure, folder, start, run, open, eventually, until, pictured, faults };
