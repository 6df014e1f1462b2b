// SPDX-License-Identifier: MIT
// courtwright open in Chromium: the page reads and saves the file of the program that serves it. Prints TAP.
// Usage: open.cjs PROGRAM BOOK.play
'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { spawn } = require('node:child_process');
const { check, figure, folder: room, run, open, eventually, pictured, faults } = require('./browser.cjs');

const [program, book] = process.argv.slice(2);

const children = [];

// The program that serves a file of this folder.
function serve(folder, name, ...words) {
  const child = spawn(program, ['open', path.join(folder, name), ...words]);
  children.push(child);
  return new Promise((good, bad) => {
    child.stdout.once('data', (data) => good({ child, address: data.toString().trim() }));
    child.once('exit', (status) => bad(new Error(`it ended with ${status}`)));
  });
}

async function end(child) {
  const over = new Promise((go) => child.once('exit', go));
  child.kill('SIGINT');
  await over;
}

// A page of that address, which may ask it alone, at any token of its when `origin` is given.
async function visit(browser, address, origin = address) {
  const page = await open(browser, address, { viewport: { width: 1280, height: 900 } }, (asked) => asked.startsWith(origin) || asked.startsWith('blob:'));
  await pictured(page);
  return page;
}

// Behind all that is there.
async function type(page, words) {
  await page.locator('.cm-content').press('Control+End');
  await page.keyboard.type(words);
}

const notice = (page) => page.locator('#notice').textContent();

// All that was typed is in the file, as far as the page knows.
async function saved(page) {
  if (!await eventually(async () => /^saved/.test(await page.locator('#saved').textContent()))) { throw new Error('it is never saved'); }
}

// The text in the page, as a coach gets at it.
async function typed(page) {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Download' }).click()]);
  return fs.readFileSync(await download.path(), 'utf8');
}

// Is that among the lines in sight? A coach looks, and does not download for it.
const seen = async (page, words) => (await page.locator('.cm-content').textContent()).includes(words);

const LANTERN = 'play "Lantern"\r\n  start five-out\r\n  ball 1\r\n  defense man\r\n  step "Swing"\r\n    1 passes to 2\r\n';

// A file of one play: as another system wrote it, one that is not there, and a program that ends.
async function small(browser) {
  const folder = fs.mkdtempSync(path.join(room, 'open-'));
  const file = path.join(folder, 'lantern.play');
  fs.writeFileSync(file, '\uFEFF' + LANTERN);
  const first = await serve(folder, 'lantern.play');
  const page = await visit(browser, first.address);
  check(await page.locator('#floor svg').count() >= 1, 'a play is shown');
  await new Promise((go) => setTimeout(go, 1200));
  check(fs.readFileSync(file, 'utf8') === '\uFEFF' + LANTERN, 'nothing is saved before something is typed');
  await type(page, '    3 stays');
  check(await eventually(() => fs.readFileSync(file, 'utf8') === '\uFEFF' + LANTERN + '    3 stays'), 'line ends and the mark at the beginning stay as they were',
    JSON.stringify(fs.readFileSync(file, 'utf8')));
  await end(first.child);
  await type(page, ' there');
  check(await eventually(async () => /does not answer/.test(await notice(page))), 'a program that was ended is told of');
  check(await page.locator('#saved').textContent() === 'not saved', 'and that it is not saved');
  check((await typed(page)).includes('3 stays there'), 'the text is still in the page');

  const fresh = await serve(folder, 'new.play');
  const empty = await visit(browser, fresh.address);
  check(/not there yet/.test(await notice(empty)) && !fs.existsSync(path.join(folder, 'new.play')), 'a new file is told, and not made unasked');
  check(await empty.locator('#floor svg').count() >= 1, 'it begins with a play');
  await type(empty, '# mine');
  check(await eventually(() => fs.existsSync(path.join(folder, 'new.play')) && fs.readFileSync(path.join(folder, 'new.play'), 'utf8').endsWith('# mine')), 'the first words make it');
  check(await eventually(async () => await empty.locator('#notice').isHidden()), 'and then nothing says that it is not there');
}

// Two tabs of one file, and another program that writes it meanwhile.
async function twoTabs(browser) {
  const folder = fs.mkdtempSync(path.join(room, 'open-'));
  const file = path.join(folder, 'lantern.play');
  fs.writeFileSync(file, LANTERN);
  const { address } = await serve(folder, 'lantern.play');
  const tabs = [];
  for (const name of ['first', 'second']) { tabs.push({ name, page: await visit(browser, address) }); }
  let written;
  const both = new Promise((go) => { written = go; });
  for (const { name, page } of tabs) {
    await page.route(/\/file/, async (route) => { await both; await route.continue(); }); // nobody saves before that
    await page.locator('.cm-content').press('Control+End');
    await page.keyboard.insertText(`# of the ${name} tab`);
  }
  fs.writeFileSync(file, '# theirs\n');
  written();
  for (const { page } of tabs) { await eventually(async () => (await page.locator('#notice button').count()) >= 2); }
  const kept = fs.readdirSync(folder).filter((name) => name.includes('(from the page')).map((name) => fs.readFileSync(path.join(folder, name), 'utf8'));
  check(kept.length === 2 && tabs.every(({ name }) => kept.some((text) => text.includes(`# of the ${name} tab`))), 'of two tabs both texts are kept', kept);
}

// What must never be lost: the file goes away or is emptied, the program ends, the page is loaded anew.
async function lost(browser) {
  const folder = fs.mkdtempSync(path.join(room, 'open-'));
  const file = path.join(folder, 'lantern.play');
  const mine = LANTERN.replace(/\r/g, '');
  const beside = path.join(folder, 'lantern (from the page).play');
  const read = () => (fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : null);
  const press = (page, name) => page.locator('#notice').getByRole('button', { name }).click();
  const port = String(20000 + process.pid % 10000);
  const origin = `http://127.0.0.1:${port}/`;
  fs.writeFileSync(file, mine);
  let served = await serve(folder, 'lantern.play', '--port', port);
  const page = await visit(browser, served.address, origin);
  let asked = 0;
  page.on('dialog', (dialog) => { asked += dialog.type() === 'beforeunload' ? 1 : 0; dialog.accept(); });
  fs.renameSync(file, path.join(folder, 'elsewhere.play'));
  check(await eventually(async () => /gone from its folder: your text is here; save writes it again/.test(await notice(page))), 'a file that was moved away is told', await notice(page));
  check(await typed(page) === mine, 'and the text stays in the page');
  await type(page, '    3 stays');
  check(await eventually(() => fs.existsSync(beside) && fs.readFileSync(beside, 'utf8') === mine + '    3 stays'), 'what is typed then lies beside', fs.readdirSync(folder));
  check(read() === null && await typed(page) === mine + '    3 stays', 'and makes no file unasked');
  check(await eventually(async () => /from the page/.test(await notice(page))), 'of which the page tells', await notice(page));
  await press(page, 'Save it again');
  check(await eventually(() => read() === mine + '    3 stays'), 'the button writes it', read());
  check(await eventually(async () => !fs.existsSync(beside) && await page.locator('#notice').isHidden()), 'and all is as it was', fs.readdirSync(folder));
  fs.unlinkSync(file);
  await eventually(async () => /gone from its folder/.test(await notice(page)));
  await page.locator('.cm-content').press('Control+s');
  check(await eventually(() => read() === mine + '    3 stays'), 'Ctrl+S writes it too', read());
  await saved(page);

  fs.writeFileSync(file, '');
  check(await eventually(async () => /was emptied meanwhile/.test(await notice(page))), 'a file that was emptied is asked about', await notice(page));
  check(await typed(page) === mine + '    3 stays' && read() === '' && fs.readFileSync(beside, 'utf8') === mine + '    3 stays', 'and both are there');
  await page.reload();
  check(await eventually(async () => /was not saved in lantern\.play\. It is kept as lantern \(from the page\)\.play\./.test(await notice(page))), 'loaded anew it says again where mine lies', await notice(page));
  await press(page, 'Put it back');
  check(await eventually(() => read() === mine + '    3 stays'), 'and puts it back', read());

  await saved(page);
  fs.unlinkSync(file);
  await eventually(async () => /gone from its folder/.test(await notice(page)));
  await type(page, ' now');
  await eventually(() => fs.existsSync(beside) && fs.readFileSync(beside, 'utf8').endsWith(' now'));
  await page.reload();
  await pictured(page);
  check(/gone from its folder: your text is here/.test(await notice(page)) && await typed(page) === mine + '    3 stays now', 'loaded anew while the file is gone, it says so and has the text', await notice(page));
  await page.waitForTimeout(1000); // longer than what is typed waits to be saved
  check(read() === null, 'and makes no file unasked');
  await press(page, 'Save it again');
  check(await eventually(() => read() === mine + '    3 stays now'), 'the button writes it then too', read());
  await saved(page);
  fs.writeFileSync(file, mine + '    3 stays');
  await eventually(async () => await page.locator('.cm-line').last().textContent() === '    3 stays');
  check(asked === 1, 'one is asked whether to leave a text that is in no file');
  asked = 0;
  await type(page, ' ');
  await saved(page);
  await page.reload();
  await pictured(page);
  fs.writeFileSync(file, mine + '    3 stays');
  await eventually(async () => await page.locator('.cm-line').last().textContent() === '    3 stays');
  check(asked === 0, 'nobody is asked to stay where nothing is lost');
  await end(served.child);
  await type(page, ' there');
  check(await eventually(async () => /does not answer.*Download keeps it/.test(await notice(page))), 'a program that was ended is told, and what keeps the text', await notice(page));
  served = await serve(folder, 'lantern.play', '--port', port);
  await page.goto(served.address);
  check(asked === 1, 'one is asked whether to leave then');
  await pictured(page);
  check(/was not saved in lantern\.play/.test(await notice(page)) && await typed(page) === mine + '    3 stays', 'the next page of that port offers what was typed', await notice(page));
  await press(page, 'Put it back');
  check(await eventually(() => read() === mine + '    3 stays there'), 'and saves it', read());
  await saved(page);
  await page.reload();
  await pictured(page);
  check(await page.locator('#notice').isHidden() && asked === 1, 'once', await notice(page));
  await end(served.child);
  await type(page, ' and so on');
  await eventually(async () => /does not answer/.test(await notice(page)));
  fs.writeFileSync(file, '# theirs\n');
  served = await serve(folder, 'lantern.play', '--port', port);
  await page.goto(served.address);
  await press(page, 'Put it back');
  check(await eventually(() => read() === mine + '    3 stays there and so on'), 'over a file that was changed meanwhile', read());
  check(fs.readFileSync(path.join(folder, 'lantern (from the folder).play'), 'utf8') === '# theirs\n', 'which is kept beside it', fs.readdirSync(folder));
}

// The folder goes away with the file in it, and the same file is opened again.
async function folderLost(browser) {
  const folder = fs.mkdtempSync(path.join(room, 'open-')), inside = path.join(folder, 'plays');
  const mine = LANTERN.replace(/\r/g, '');
  fs.mkdirSync(inside);
  fs.writeFileSync(path.join(inside, 'lantern.play'), mine);
  const first = await serve(inside, 'lantern.play');
  const page = await visit(browser, first.address);
  page.on('dialog', (dialog) => dialog.accept());
  fs.renameSync(inside, path.join(folder, 'elsewhere'));
  await page.reload();
  await pictured(page);
  check(/lantern\.play is gone, and its folder with it\. Your text is here/.test(await notice(page)) && await typed(page) === mine, 'a folder that was moved away is told, and the text is there', await notice(page));
  fs.renameSync(path.join(folder, 'elsewhere'), inside);
  await page.reload();
  await pictured(page);
  check(await page.locator('#notice').isHidden() && await typed(page) === mine, 'with the folder back all is as it was', await notice(page));
  await end(first.child);
  const again = await serve(inside, 'lantern.play');
  check(new URL(again.address).port === new URL(first.address).port, 'the same file has the same port, so that its drafts are found', again.address);
  const beside = await serve(inside, 'lantern.play');
  check(new URL(beside.address).port !== new URL(again.address).port, 'twice at once it has another');
}

async function several(browser) {
  const folder = fs.mkdtempSync(path.join(room, 'open-'));
  const file = path.join(folder, path.basename(book));
  for (const name of fs.readdirSync(path.dirname(book))) {
    if (name.endsWith('.play')) { fs.copyFileSync(path.join(path.dirname(book), name), path.join(folder, name)); }
  }
  const { address } = await serve(folder, path.basename(book));
  const text = () => fs.readFileSync(file, 'utf8');
  const page = await visit(browser, address);
  figure(`first picture ${Math.round(await page.evaluate(() => performance.now()))} ms after the address was asked for`);
  check(await page.locator('#floor svg').count() >= 1, 'the page shows the first play of the book');
  check(page.asked.length === 0, 'it asks for nothing but the program', page.asked);
  check((await page.locator('#name').textContent()).includes(path.basename(book)), 'and names the file');
  check(await page.locator('#plays option').count() > 10, 'the plays of the files it includes are there too');

  const first = await page.locator('#title').textContent();
  await page.locator('#plays').selectOption({ index: 3 });
  check(await eventually(async () => (await page.locator('#title').textContent()) !== first && (await page.locator('#floor svg').count()) >= 1), 'a play of an included file is shown when it is chosen');
  check(/\(shown: \w+\.play\)/.test(await page.locator('#name').textContent()), 'and which file it is in');

  const before = text();
  const mark = '# typed in the page';
  await page.locator('.cm-content').click();
  await page.keyboard.press('Control+End');
  await page.keyboard.type(`\n${mark}`);
  check(await eventually(() => text().includes(mark)), 'what is typed is saved');
  check(text().startsWith(before.trimEnd()), 'and all else stays as it was');
  check(fs.readdirSync(folder).every((name) => name.endsWith('.play') && !name.includes('(')), 'with nothing beside it', fs.readdirSync(folder));

  fs.writeFileSync(file, before + '# by another hand\n');
  check(await eventually(() => seen(page, '# by another hand')) && (await typed(page)).includes('# by another hand'), 'what another hand writes is seen, and nothing is asked when nothing is lost');
  await page.locator('.cm-content').press('Control+End');
  await page.keyboard.type(`${mark} once more`);
  fs.writeFileSync(file, before + '# by another hand, again\n');
  await eventually(async () => (await page.locator('#notice button').count()) >= 2);
  check(/changed meanwhile/.test(await notice(page)), 'a file that was changed while one types is told', await notice(page));
  const beside = (from) => fs.readdirSync(folder).filter((name) => name.includes(`(from the ${from}`)).map((name) => fs.readFileSync(path.join(folder, name), 'utf8'));
  check(text() === before + '# by another hand, again\n', 'and not written over');
  check(beside('page').length === 1 && beside('page')[0].includes(`${mark} once more`), 'what was typed lies beside it', beside('page'));
  await page.getByRole('button', { name: 'Keep mine' }).click();
  check(await eventually(() => text().includes(`${mark} once more`)), 'the coach keeps mine');
  check(await eventually(() => beside('folder')[0] === before + '# by another hand, again\n' && beside('page').length === 0), 'and the other is kept beside it', fs.readdirSync(folder));
  await saved(page);
  await page.locator('.cm-content').press('Control+End');
  await page.keyboard.type(' and again');
  fs.writeFileSync(file, before + '# a third hand\n');
  await eventually(async () => (await page.locator('#notice button').count()) >= 2);
  await page.getByRole('button', { name: 'Take what is there' }).click();
  check(await eventually(() => seen(page, '# a third hand')) && (await typed(page)).includes('# a third hand') && text() === before + '# a third hand\n', 'the coach takes what is there');
  check(beside('page').length === 1 && beside('page')[0].includes('and again'), 'and mine stays beside it', fs.readdirSync(folder));

  await page.reload();
  await pictured(page);
  check((await typed(page)).trim() === text().trim(), 'loaded anew, nothing is lost');
  const other = await (await browser.newContext()).newPage();
  const stolen = await other.goto(address.replace(/\/[0-9a-f]{32}\//, '/' + '0'.repeat(32) + '/'));
  check(stolen.status() === 404, 'another token opens nothing');
  await other.goto('data:text/html,<title>elsewhere</title>');
  const read = await other.evaluate((there) => fetch(there + 'file').then(() => 'read', () => 'refused'), address);
  const written = await other.evaluate((there) => fetch(there + 'file', { method: 'PUT', body: 'x' }).then(() => 'written', () => 'refused'), address);
  check(read === 'refused' && written === 'refused' && text().includes('a third hand'), 'a page from elsewhere reads and writes nothing, even with the address', { read, written });
  const wrong = await faults(page);
  check(wrong.length === 0, 'axe-core finds nothing', wrong.join('\n'));
  const odd = page.errors.filter((said) => !/status of 412/.test(said)); // which it tells of each quarrel
  check(odd.length === 0, 'the browser complains of nothing', odd);
}

run(async (browser) => {
  try {
    await several(browser);
    await small(browser);
    await twoTabs(browser);
    await lost(browser);
    await folderLost(browser);
  } finally {
    children.forEach((child) => child.kill('SIGINT'));
  }
});
