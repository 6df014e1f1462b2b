// SPDX-License-Identifier: MIT
// The page to write in, in a browser without a network, opened as a file. Usage: node edit.cjs PAGE BOOK...
'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { check, figure, folder, run, open, eventually, until, pictured, faults } = require('./browser.cjs');

const [pagePath, ...books] = process.argv.slice(2);
const address = 'file://' + path.resolve(pagePath);
const only = (url) => url.startsWith('file://') || url.startsWith('blob:');

const PLAY = `play "Millrace"
  level varsity
  start 1 top, 2 right wing, 3 left corner, 4 left wing, 5 right block
  ball 1
  defense man

  step "Swing"
    1 passes to 2
    3 stays
    5 stays
`;

// 3 comes to where 4 stands.
const TAKEN = PLAY.replace('    3 stays\n', '    4 stays\n') + '    1 screens for 3\n    3 comes off 1 to left wing\n';

// 4 has nothing to do.
const IDLE = PLAY + '    2 drives to the rim\n';

const shown = (page) => page.evaluate(() => Number(document.documentElement.dataset.shown || 0));

// Does something and waits until the picture that follows is there.
async function after(page, work) {
  const before = await shown(page);
  await work();
  await until(page, (count) => Number(document.documentElement.dataset.shown || 0) > count, before);
}

const text = (page) => page.evaluate(() => globalThis.courtwright.text());

async function write(page, content) {
  await page.locator('.cm-content').click();
  await page.keyboard.press('Control+a');
  await after(page, () => content ? page.keyboard.insertText(content) : page.keyboard.press('Delete'));
  await until(page, (wanted) => globalThis.courtwright.drawn() === wanted, content); // not the text before it
}

async function typing(page) {
  await write(page, PLAY);
  const before = await page.innerHTML('#floor');
  check((await page.textContent('#title')) === 'Millrace', 'the play that is typed is shown');
  await page.locator('.cm-content').press('Control+End');
  for (const letter of '    4 cuts to the rim') {
    await after(page, () => page.keyboard.type(letter));
  }
  const now = await page.innerHTML('#floor');
  check(now !== before && now.includes('<svg'), 'the diagram changes as one types');
  await until(page, () => document.getElementById('source').shadowRoot.querySelectorAll('.k-heading').length > 0);
  check(true, 'headings are colored by the core');
}

async function completing(page) {
  await write(page, PLAY + '    4 cu');
  await page.keyboard.type('t');
  await page.waitForSelector('.cm-tooltip-autocomplete li');
  const first = await page.locator('.cm-tooltip-autocomplete li').first().textContent();
  check(first.startsWith('cuts'), 'a verb that is begun is offered', first);
  await page.keyboard.press('Escape');
}

async function entering(page) {
  const listed = () => page.waitForSelector('.cm-tooltip-autocomplete li');
  const begun = async (line) => {
    await write(page, PLAY + line.slice(0, -1));
    await page.keyboard.type(line.slice(-1));
    await listed();
    await page.waitForTimeout(200); // longer than the list is too new to be taken from
  };
  await begun('    1 shoots');
  await after(page, () => page.keyboard.press('Enter'));
  check(await text(page) === PLAY + '    1 shoots\n    ', 'Enter makes a new line, whatever is offered', await text(page));
  await begun('    4 cut');
  await after(page, () => page.keyboard.press('Tab'));
  check((await text(page)).startsWith(PLAY + '    4 cuts'), 'Tab takes what is offered', await text(page));
  await begun('    4 cut');
  await page.keyboard.press('ArrowDown');
  await after(page, () => page.keyboard.press('Enter'));
  check((await text(page)).startsWith(PLAY + '    4 cuts') && !(await text(page)).endsWith('\n    '), 'so do an arrow and Enter', await text(page));
}

// What is only an example, or one of several ways, is not to be written over what a coach wrote.
async function sparing(page) {
  for (const [content, what] of [
    ['team "Millrace"\n  1\n', 'an example of a player'],
    [PLAY + '    read x3 hesitates a bit\n      2 shoots\n', 'what a defender may do'],
    [PLAY + '    1 passes the ball quickly over there\n', 'what is not understood'],
  ]) {
    await write(page, content);
    await page.waitForSelector('#found .error');
    const offered = await page.locator('#found .error ~ .end .apply').count();
    check(offered === 0, `${what} is not applied`, await page.textContent('#found'));
  }
}

async function hovering(page) {
  await write(page, PLAY);
  await page.locator('.k-verb').first().hover();
  await page.waitForSelector('.said');
  check((await page.textContent('.said')).includes('passes to'), 'a word says what it means');
  await page.mouse.move(5, 5);
}

async function finding(page) {
  await write(page, TAKEN);
  await page.waitForSelector('#found .square');
  const line = page.locator('.cm-line', { hasText: '3 comes off' });
  check(await line.locator('.found').count() > 0, 'what is found is underlined');
  check((await line.locator('.squares').textContent()) === 'A', 'with its square at the end of the line');
  check((await page.textContent('#found li')).includes('stands there too'), 'and told in the list', await page.textContent('#found'));
  check((await page.locator('#floor svg text', { hasText: /^A$/ }).count()) === 1, 'and drawn in the picture under its letter');
  check(await page.locator('#found .apply').count() === 0, 'one of two ways out is not applied', await page.textContent('#found'));
  await write(page, IDLE);
  await page.waitForSelector('#found .square');
  await after(page, () => page.locator('#found .apply').first().click());
  check(await text(page) === IDLE.replace('"Swing"', '"Swing"\n    4 stays'), 'a sentence that is missing is put under its step', await text(page));
  await until(page, () => !document.querySelector('#found').textContent.includes('stay on purpose'));
  check(true, 'and the finding is gone');
}

// Notes that were written as a list.
async function pasting(page) {
  await write(page, PLAY);
  await page.locator('.cm-content').press('Control+End');
  const notes = '    \u2022 4 cuts to the rim\n    \u2013 then, 2 passes to 4\n    1. 1 stays\n    2) 3 stays\n    3 stays\n';
  await after(page, () => page.evaluate((words) => {
    const data = new DataTransfer();
    data.setData('text/plain', words);
    document.getElementById('source').shadowRoot.querySelector('.cm-content').dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  }, notes));
  check((await text(page)) === PLAY + '    4 cuts to the rim\n    then, 2 passes to 4\n    1 stays\n    3 stays\n    3 stays\n', 'the marks of a pasted list are left out', await text(page));
}

// What is found in a step that is not shown is told too.
async function otherSteps(page) {
  await write(page, PLAY.replace('    3 stays\n    5 stays\n', '    4 stays\n') + '    3 goes to left wing\n    0.6 s after 3 arrives, 2 passes to 5\n\n  step "Then"\n    5 passes to 2\n');
  const other = page.locator('#found .other').filter({ hasText: 'stands there too' });
  check(await eventually(async () => await other.count() === 1), 'a finding of another step is told', await page.textContent('#found'));
  await after(page, () => other.locator('.step').click());
  check(await page.locator('#steps button').first().getAttribute('aria-current') === 'true', 'and its button shows that step');
}

// The picture stays while a sentence is being written, and says that it is of a moment ago.
async function half(page) {
  await write(page, PLAY);
  let before = await page.innerHTML('#floor svg'), gone = 0, old = 0;
  await page.locator('.cm-content').press('Control+End');
  for (const letter of '    4 cuts to left sh') {
    await after(page, () => page.keyboard.type(letter));
    const isOld = await page.locator('#floor.old').count(), now = await page.innerHTML('#floor');
    old += isOld;
    gone += now.includes('<svg') && (!isOld || now.includes(before)) ? 0 : 1;
    before = isOld ? before : await page.innerHTML('#floor svg');
  }
  await page.keyboard.press('Escape');
  check(gone === 0 && old > 3, 'while a sentence is being written the last whole picture stays', `${gone} gone, ${old} old`);
  check((await page.textContent('#held')) === '1: as it was before the error in line 11', 'marked as what it is', await page.textContent('#held'));
  await after(page, () => page.click('#theme'));
  const dark = await page.innerHTML('#floor svg');
  check(dark !== before && await page.locator('#floor.old').count() === 1, 'and goes dark with the page');
  await after(page, () => page.click('#theme'));
  await page.click('#watch');
  await page.waitForSelector('#panel:not([hidden])');
  check(await page.locator('#floor .moving').count() === 1, 'it can be watched');
  await after(page, () => page.click('#watch'));
  await page.locator('.cm-content').press('Control+End');
  await after(page, () => page.keyboard.insertText('ort corner'));
  await until(page, () => !document.getElementById('floor').classList.contains('old'));
  check(await page.innerHTML('#floor svg') !== before, 'a text that is whole again is drawn');
  await write(page, '');
  check((await page.textContent('#floor')).includes('A play begins with'), 'an empty text has no picture');
}

async function wrongWord(page) {
  await write(page, PLAY);
  await write(page, '');
  await write(page, PLAY.replace('Millrace', 'Sluice').replace('passes', 'pases'));
  await page.waitForSelector('#found .error');
  check((await page.textContent('#floor')).includes('drawn when what is marked'), 'an error is told, and a play that never was whole waits for it');
  await after(page, () => page.locator('#found .apply').first().click());
  check((await text(page)) === PLAY.replace('Millrace', 'Sluice'), 'a misspelt word is mended by its help');
  await write(page, 'team "Millrace"\n  1 Maya\n');
  await page.waitForSelector('#found .error ~ .end .apply');
  await after(page, () => page.locator('#found .apply').first().click());
  check((await text(page)).includes('1 "Maya"'), 'a name without quotes gets them', await text(page));
  await write(page, PLAY.replace('1 passes to 2', '2 passes to 3'));
  await page.waitForSelector('#found .error');
  const said = await page.textContent('#found');
  check(said.includes('get the ball first') && !said.includes('Nothing to check') && await page.locator('#found .other').count() === 0, 'so is one that only the clock can find', said);
}

// What is painted of the moving picture, as the browser computes it.
const painted = (page) => page.evaluate(() => {
  const of = (selector) => [...document.querySelectorAll(`#floor .moving ${selector}`)].map((one) => getComputedStyle(one));
  const inked = (style) => style.fill !== 'none' || style.stroke !== 'none';
  return {
    text: of('text').map((style) => style.fill),
    lines: of('path, line').filter(inked).length,
    ball: of('.ball, .ball *').some(inked),
  };
});

async function moving(page) {
  await write(page, PLAY);
  await page.click('#watch');
  await page.waitForSelector('#panel:not([hidden])');
  const place = () => page.evaluate(() => [...document.querySelectorAll('#floor .moving .ball')].map((one) => one.getBoundingClientRect().x).join());
  check(await eventually(async () => await page.textContent('#time') !== '0.0 s'), 'the play begins by itself');
  const seen = await painted(page);
  check(seen.text.length >= 5 && seen.text.every((fill) => fill !== 'none'), 'who moves has a color', seen.text);
  check(seen.lines > 0 && seen.ball, 'so have lines and the ball', seen);
  await page.locator('#line').fill('0'); // a slow machine may have come to its end
  const first = await place();
  await page.click('#play');
  check(await eventually(async () => first !== await place()), 'the play moves', first);
  await page.evaluate(() => { const play = document.getElementById('play'); if (play.textContent === 'Pause') { play.click(); } });
  const at = await page.evaluate(() => document.querySelector('#floor svg').getCurrentTime());
  await page.waitForTimeout(200);
  check(at === await page.evaluate(() => document.querySelector('#floor svg').getCurrentTime()), 'it is stopped');
  await page.locator('#line').fill('0.5');
  check(Math.abs(await page.evaluate(() => document.querySelector('#floor svg').getCurrentTime()) - 1.5) < 0.02, 'the time line goes anywhere', String(at));
  check(await page.locator('#strip .bar').count() >= 1, 'the strip has a bar for what is done');
  await page.click('#watch');
}

async function reading(page) {
  const reads = PLAY + '    read x2 trails "Drive"\n      2 drives to the rim\n    read otherwise "Back out"\n      2 passes to 1\n';
  await write(page, reads);
  const labels = await page.locator('#steps button').allTextContents();
  check(labels.length >= 2, 'each read has a button', labels.join(' '));
  await after(page, () => page.locator('#steps button').last().click());
  check(await page.locator('#steps button').last().getAttribute('aria-current') === 'true', 'and shows its picture');
}

async function dark(page) {
  const ink = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor + document.querySelector('#floor svg').innerHTML.length
    + document.querySelector('#floor .player').getAttribute('fill'));
  await write(page, PLAY);
  const light = await ink();
  await after(page, () => page.click('#theme'));
  check(light !== await ink(), 'the page and the picture go dark');
  check((await faults(page)).length === 0, 'dark: axe finds no fault', await faults(page));
  await after(page, () => page.click('#theme'));
}

async function tidying(page) {
  await write(page, PLAY.replace('  1 passes to 2', '  1   pass   the ball to 2'));
  await page.click('#tidy');
  check(await eventually(async () => (await text(page)).includes('\n    1 passes to 2\n')), 'a text is tidied', await text(page));
}

async function printing(page) {
  await write(page, PLAY);
  await page.click('#page');
  for (const sheet of ['handout', 'own', 'coach', 'card']) {
    await page.selectOption('[name=sheet]', sheet);
    await until(page, (word) => (document.documentElement.dataset.paper || '').startsWith(word), sheet);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    check(pdf.subarray(0, 5).toString() === '%PDF-' && pdf.length > 5000, `${sheet} is printed`, pdf.length);
  }
  await page.selectOption('[name=size]', 'a4');
  await until(page, () => (document.documentElement.dataset.paper || '').endsWith('a4'));
  const file = path.join(folder, 'a4.pdf');
  await page.pdf({ path: file, preferCSSPageSize: true });
  check(/MediaBox\s*\[\s*0 0 59[45]/.test(fs.readFileSync(file, 'latin1')), 'on A4 too');
  const found = await faults(page);
  check(found.length === 0, 'pages to print: axe finds no fault', found);
  await page.getByRole('button', { name: 'Back' }).click();
}

const sheets = (page) => page.evaluate(() => [...document.querySelectorAll('#paper .sheet')].map((one) => one.innerText).join());
const onPaper = (page, word) => until(page, (wanted) => (document.documentElement.dataset.paper || '').startsWith(wanted), word);

// Each page of a sheet says whose it is and of what, and what goes wrong most often is for the coach alone.
async function printedHeads(page) {
  const mistake = PLAY.replace('    3 stays\n', '    mistake "2 waits for the ball."\n    point "Come to the ball."\n    3 stays\n');
  await write(page, mistake + '    read x2 trails "Drive"\n      2 drives to the rim\n    read otherwise "Back out"\n      2 passes to 1\n');
  await page.click('#page');
  await page.selectOption('[name=sheet]', 'own');
  await page.selectOption('[name=reader]', '2');
  await onPaper(page, 'own');
  check(await eventually(async () => (await page.locator('#paper thead').innerText()).includes('sheet for 2')), 'the head that stands on every page says whose sheet it is');
  check((await page.locator('#paper thead').innerText()).includes('Millrace'), 'and of which play');
  const rules = await page.evaluate(() => document.adoptedStyleSheets.flatMap((one) => [...one.cssRules]).map((one) => one.cssText).join());
  check(rules.includes('counter(page)'), 'pages are numbered');
  const own = await sheets(page);
  check(own.includes('Come to the ball.') && !own.includes('waits for the ball'), 'a player is not shown what goes wrong most often', own);
  await page.selectOption('[name=sheet]', 'coach');
  await onPaper(page, 'coach');
  check((await sheets(page)).includes('2 waits for the ball'), 'the coach is', await sheets(page));
  const bars = await page.evaluate(() => [...document.querySelectorAll('#paper .step.whole .strip')].map((one) => one.querySelector('title').textContent));
  check(bars.length === 1 && bars[0].includes('1 passes to 2') && !bars[0].includes('drives'), 'bars are of what the picture over them shows, and say to whom', bars);
  await page.getByRole('button', { name: 'Back' }).click();
}

// An error that is being mended does not take the sheet away.
async function printingBroken(page) {
  await write(page, PLAY);
  await write(page, PLAY + '    2 zzz to the rim\n');
  await page.click('#page');
  await onPaper(page, 'handout');
  const said = () => page.locator('#paper [role=status]').innerText();
  check(await eventually(async () => (await said()).includes('as it was before the error in line 11')), 'a play with an error is printed as it was, and this is said', await said());
  check((await sheets(page)).includes('1 passes to 2'), 'with its steps', await sheets(page));
  await page.getByRole('button', { name: 'Back' }).click();
  await write(page, 'play "Loom"\n  start five-out\n  ball 1\n  step\n    2 zzz to the rim\n');
  await page.click('#page');
  check(await eventually(async () => (await said()).includes('There is an error in line 5')), 'one that was never drawn says where the error is', await said());
  check(await page.getByRole('button', { name: 'Print' }).isDisabled(), 'and no empty sheet is printed');
  await page.getByRole('button', { name: 'Back' }).click();
}

// Players are mostly minors: a sheet has their numbers, and names where the coach asks for them.
async function naming(page) {
  await write(page, 'team "Larkspur Kites"\n  1 "Wren Halloway" guard, jersey 12\n\n' + PLAY);
  await page.click('#page');
  await page.selectOption('[name=sheet]', 'own');
  await until(page, () => (document.documentElement.dataset.paper || '').startsWith('own') && document.querySelector('#paper .whose'));
  const sheet = () => page.evaluate(() => [...document.querySelectorAll('#paper .sheet')].map((one) => one.textContent).join());
  check(!(await sheet()).includes('Wren'), 'no name is printed unasked');
  const rows = await page.evaluate(() => new Set([...document.querySelectorAll('.chooser form > *')].filter((one) => one.offsetParent).map((one) => Math.round(one.getBoundingClientRect().y / 20))).size);
  check(rows === 1, 'the bar over the sheets is one row', String(rows));
  await page.getByLabel('Names').check();
  check(await eventually(async () => (await sheet()).includes('Wren')), 'names are, where asked for');
  await page.getByRole('button', { name: 'Back' }).click();
}

// The browser's own printing, without the page's sheets.
async function menuPrinting(page) {
  await write(page, PLAY);
  await page.emulateMedia({ media: 'print' });
  const seen = await page.evaluate(() => ({
    floor: document.querySelector('#floor svg').getBoundingClientRect().height,
    text: document.getElementById('printed').innerText,
    tall: document.getElementById('printed').getBoundingClientRect().height,
    top: document.querySelector('.top').getBoundingClientRect().height,
  }));
  check(seen.floor > 100 && seen.top === 0, 'the picture is printed without the page round it', seen);
  check(seen.text.includes('1 passes to 2') && seen.tall > 100, 'and the text with it', seen);
  await page.emulateMedia({ media: null });
  const pdf = await page.pdf();
  check(pdf.length > 9000, 'the sheet is not empty', pdf.length);
}

async function keeping(page) {
  await write(page, PLAY + '    4 cuts to the rim\n');
  const before = await text(page);
  await page.keyboard.type('# last'); // and at once away
  await page.reload();
  await pictured(page);
  check((await text(page)) === before + '# last', 'a reload loses nothing', await text(page));
}

async function drafts(page) {
  await write(page, PLAY);
  const other = PLAY.replace('Millrace', 'Sluice');
  await page.setInputFiles('#file', { name: 'other.play', mimeType: 'text/plain', buffer: Buffer.from(other) });
  await until(page, (wanted) => globalThis.courtwright.drawn() === wanted, other); // a picture of the text before may still come
  await page.reload();
  await pictured(page);
  check((await page.textContent('#name')) === 'other.play', 'a file that was opened is there after a reload');
  await until(page, () => !document.getElementById('drafts').hidden);
  await after(page, () => page.selectOption('#drafts', { index: 1 }));
  check(await text(page) === PLAY, 'what was written before is among the drafts', await text(page));
}

// Is the picture that stands there what `svg` says?
function isPicture(page, which) {
  return page.evaluate((wanted) => {
    const { ahead } = globalThis.courtwright;
    const svg = wanted === 'kept' ? JSON.parse(localStorage.getItem('courtwright-ahead')).svg : ahead.drawn.light;
    const drawn = new DOMParser().parseFromString(svg.replace(/<style\b[^]*?<\/style>/g, ''), 'image/svg+xml').documentElement;
    return document.querySelector('#floor svg').isEqualNode(document.adoptNode(drawn));
  }, which);
}

async function openingAhead(page) {
  await write(page, PLAY);
  const kept = (wanted) => { // of this text, under its name: one of the same words may lie there from before
    const ahead = JSON.parse(localStorage.getItem('courtwright-ahead')), asked = ahead && JSON.parse(ahead.key)[1];
    return asked && asked.text === wanted && asked.name === document.getElementById('name').textContent;
  };
  check(await eventually(() => page.evaluate(kept, PLAY)), 'when the keys rest, the picture that the text opens with is kept');
  await page.reload();
  await pictured(page);
  check(await page.evaluate(() => globalThis.courtwright.wasDrawn) && await text(page) === PLAY, 'and is what the page begins with');
  check(await isPicture(page, 'kept'), 'it is what the module draws then');
  const found = await page.evaluate(() => {
    const [, asked, includes] = JSON.parse(JSON.parse(localStorage.getItem('courtwright-ahead')).key), { ahead } = globalThis.courtwright;
    const find = (more, files) => Boolean(ahead.find({ ...asked, ...more }, files));
    return [find({}, includes), find({ text: asked.text + ' ' }, includes), find({ dark: true }, includes), find({}, { 'more.play': '' })];
  });
  check(found.join() === 'true,false,false,false', 'it is of that text alone, as it was asked for', found);
}

async function files(page) {
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#download')]);
  check(fs.readFileSync(await download.path(), 'utf8') === await text(page), 'the text is downloaded as it stands');
  await after(page, () => page.setInputFiles('#file', books));
  await until(page, () => document.getElementById('plays').options.length > 10);
  check((await page.textContent('#name')) === 'kites.play', 'a book of several files is opened');
  await after(page, () => page.selectOption('#plays', '1'));
  check((await page.textContent('#title')) === 'Lantern', 'a play is picked by its name');
}

// How long the worker takes for a key, in whatever text is open.
async function times(page, what) {
  await page.locator('.cm-content').press('End');
  await page.keyboard.type(' ');
  const before = await page.evaluate(() => globalThis.courtwright.times.length);
  for (let i = 0; i < 20; i++) {
    await after(page, () => page.keyboard.type(i % 2 ? 'a' : '#'));
  }
  const took = (await page.evaluate((from) => globalThis.courtwright.times.slice(from), before)).sort((a, b) => a - b);
  figure(`${what}: key to picture in the worker, median ${took[took.length >> 1].toFixed(1)} ms, most ${took[took.length - 1].toFixed(1)} ms`);
  check(took.length >= 20, `${what}: every key is drawn`);
}

// A phone that is turned: the lines break anew, and each number stands beside its line at once.
async function turned(page) {
  const long = 'and on '.repeat(12);
  await page.setViewportSize({ width: 844, height: 390 });
  await write(page, `play "A name that goes on ${long}"\n  start five-out\n  ball 1\n  # ${long}\n  1 passes to 2\n  # ${long}${long}\n  # the last\n`);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  const seen = await page.evaluate(() => {
    const root = document.getElementById('source').shadowRoot;
    const tops = (selector) => [...root.querySelectorAll(selector)].map((one) => one.getBoundingClientRect()).filter((box) => box.height > 0).map((box) => Math.round(box.top));
    return { lines: tops('.cm-line'), numbers: tops('.cm-lineNumbers .cm-gutterElement'), wide: document.documentElement.scrollWidth };
  });
  check(seen.lines.length > 6 && seen.lines.every((top) => seen.numbers.includes(top)), 'a turned phone: the numbers stand beside their lines', seen);
  check(seen.wide <= 390, 'and a long name does not widen the page', seen.wide);
}

async function main(browser) {
  figure(`the page holds ${fs.statSync(pagePath).size} bytes`);
  const page = await open(browser, address, { viewport: { width: 1280, height: 860 }, acceptDownloads: true }, only);
  await pictured(page);
  const [first, ran] = await page.evaluate(() => [globalThis.courtwright.first, globalThis.courtwright.ran].map(Math.round));
  figure(`first picture ${first} ms after opening; drawn anew by the module after ${ran} ms`);
  check(await page.evaluate(() => globalThis.courtwright.wasDrawn) && await isPicture(page, 'sample'), 'the page opens with a picture of the sample, and the module draws the same');
  check(await page.locator('#floor svg').count() === 1, 'there is a picture before anything is typed');
  await page.click('#watch');
  await page.waitForSelector('#panel:not([hidden])');
  const [most, bars] = await page.evaluate(() => [Number(document.getElementById('line').max), document.querySelector('#strip title').textContent]);
  check(most > 1 && most < 4 && bars.includes('1 screens for 5') && !bars.includes('passes'), 'a step is watched as far as its reads begin, and its bars are its own', [most, bars]);
  await after(page, () => page.click('#watch'));
  const found = await faults(page);
  check(found.length === 0, 'light: axe finds no fault', found);
  for (const situation of [typing, completing, entering, sparing, hovering, finding, otherSteps, pasting, half, wrongWord, moving, reading, dark, tidying, printing, printedHeads, printingBroken, naming, menuPrinting,
    keeping, drafts, openingAhead]) {
    try {
      await situation(page);
    } catch (thrown) {
      check(false, `${situation.name} comes to its end`, thrown.message);
      await page.reload();
      await pictured(page);
    }
  }
  await write(page, PLAY);
  await times(page, 'a play of its own');
  await files(page);
  await times(page, 'the example book');
  const phone = await open(browser, address, { viewport: { width: 390, height: 844 } }, only);
  await pictured(phone);
  const wide = await phone.evaluate(() => document.documentElement.scrollWidth);
  check(wide <= 390, 'on a narrow screen nothing sticks out', String(wide));
  const small = await phone.evaluate(() => [...document.querySelectorAll('button, select')].filter((one) => one.offsetParent && one.getBoundingClientRect().height < 44 && !one.classList.contains('line')).map((one) => one.textContent));
  check(small.length === 0, 'and what is touched is 44 px high', small.join(', '));
  await turned(phone);
  await phone.click('#watch');
  await phone.waitForSelector('#panel:not([hidden])');
  const seen = await painted(phone);
  check(seen.text.length >= 5 && seen.text.every((fill) => fill !== 'none') && seen.lines > 0, 'and a play is watched', seen);
  check(page.asked.length === 0 && phone.asked.length === 0, 'nothing is asked of a network', [...page.asked, ...phone.asked].join(' '));
  // Where styled text is replaced Chromium's own editing sets a style on what comes, which the policy refuses.
  const errors = [...page.errors, ...phone.errors].filter((said) => !/^Applying inline style .* style attributes /s.test(said));
  check(errors.length === 0, 'and nothing went wrong unseen', errors.join('\n'));
}

run(main);
