// SPDX-License-Identifier: MIT
// The playbook as one HTML file, as a player and a coach meet it: on a phone and on a desk, dark, without
// its script, without a network, by keyboard, by address. Usage: phone.cjs PROGRAM BOOK.play
'use strict';
const { execFileSync } = require('node:child_process');
const fs = require('node:fs');
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const { check, figure, folder, run, open, until, faults } = require('./browser.cjs');

const [program, example] = process.argv.slice(2);
const PHONE = { viewport: { width: 390, height: 844 }, offline: true };
const DESK = { viewport: { width: 1280, height: 900 }, offline: true };

// What nobody would write on a Sunday night, and somebody will: words without end, signs that mean something to a
// page, letters that run to the left, a drill with twelve players.
const HARD = `playbook "A book whose title goes on ${'and on '.repeat(20)}"
  level u12
team "\u05e9\u05d5\u05e2\u05dc\u05d9\u05dd & <b>Kites</b>"
  1 "\u05e0\u05d5\u05e2\u05d4 \u05dc\u05d5\u05d9"
  2 "Maximiliane-Wilhelmina Featherstonehaugh"
  3 "\u0644\u064a\u0644\u0649"
  4 "O'Brien \\"Bo\\" Quill"
  5 "${'Pneumonoultramicroscopic'.repeat(3)}"

play "<script>alert(1)</script> ${'Longest'.repeat(20)}"
  about "One & two < three > none; 'quoted' and ]]> closed --> too."
  call "</title><img src=x onerror=alert(2)>"
  caution "Our own line <i>stands</i> behind it."
  tags man, "a \\"tag\\" of ours"
  start five-out
  ball 1
  step "\u05e9\u05dc\u05d1 \u05e8\u05d0\u05e9\u05d5\u05df"
    1 passes to 2
    point 2 "\u05d4\u05e8\u05d9\u05de\u05d9 \u05d0\u05ea \u05d4\u05e8\u05d0\u05e9"
    read x1 trails "${'A read with a name that nobody can shout '.repeat(4)}"
      1 cuts to the rim
    read otherwise "Stay"
      1 goes to left short corner
      point "${'x'.repeat(300)}"

play "Same name"
  start five-out
  ball 1
  step
    1 passes to 2

play "Same-name!"
  start five-out
  ball 1
  step
    2 cuts to the rim
`;

function write(text, name, ...options) {
  const source = path.join(folder, name + '.play'), page = path.join(folder, name + '.html');
  if (text !== null) { fs.writeFileSync(source, text); }
  execFileSync(program, ['book', text === null ? example : source, '-o', page, ...options], { stdio: ['ignore', 'ignore', 'pipe'] });
  return page;
}

const ids = (page) => page.$$eval('article:not(.plan)', (all) => all.map((one) => [one.id, [...one.querySelectorAll('.way')].map((way) => way.id)]));

// Opened from the disk with no network; nothing but the file itself may be asked for.
function visit(browser, file, options, hash) {
  const address = pathToFileURL(file).href;
  return open(browser, address + (hash || ''), options, (asked) => asked.split('#')[0] === address);
}

async function quiet(page, what) {
  check(page.asked.length === 0, `${what}: no request leaves`, page.asked);
  check(page.errors.length === 0, `${what}: nothing is complained of`, page.errors);
  await page.context().close();
}

const fits = (page) => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);

// Everything that can be touched and is smaller than a finger.
const small = (page) => page.$$eval('a, button, input', (all) => all
  .map((one) => [one.getBoundingClientRect(), one])
  .filter(([box]) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
  .map(([box, one]) => `${one.tagName} ${one.textContent.trim().slice(0, 30)} ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`));

async function everyWay(browser, file, options, what) {
  const page = await visit(browser, file, options);
  const wide = [], low = [];
  for (const [, ways] of await ids(page)) {
    for (const way of ways) {
      await page.evaluate((hash) => { location.hash = hash; }, way);
      await until(page, (id) => document.getElementById(id).matches('.on'), way);
      if (!await fits(page)) { wide.push(way); }
      if (options === PHONE) { low.push(...(await small(page)).map((one) => `${way}: ${one}`)); }
    }
  }
  check(wide.length === 0, `${what}: nothing has to be scrolled sideways, on no step or read`, wide);
  if (options === PHONE) { check(low.length === 0, `${what}: every target is 44 px or more`, low); }
  await quiet(page, what);
}

// How a page is met, and which of a play's ways is open (none: the list of plays).
const WHOLE = [['contents', PHONE, ''], ['a desk in the dark', { ...DESK, colorScheme: 'dark' }, 2], ['no script', { ...PHONE, javaScriptEnabled: false }, '']];
const EVERY = [...WHOLE, ['a play', PHONE, 1], ['a read by number', PHONE, 2], ['a play in the dark', { ...PHONE, colorScheme: 'dark' }, 1], ['a desk', DESK, 1]];

async function accessible(browser, file, name, meetings) {
  for (const [what, options, hash] of meetings) {
    const page = await visit(browser, file, options.javaScriptEnabled === false ? { ...options, javaScriptEnabled: true } : options);
    if (options.javaScriptEnabled === false) { // axe is a script itself: the page as it is before its own has run
      await page.evaluate(() => { document.documentElement.classList.remove('js', 'reading'); for (const on of document.querySelectorAll('.bar, .search, .me')) { on.hidden = true; } });
    } else if (hash) {
      const ways = (await ids(page)).find(([, all]) => all.length > 1)[1];
      await page.evaluate((to) => { location.hash = to; }, hash === 1 ? ways[0] : ways[1] + ',p3');
      await until(page, (id) => document.getElementById(id).matches('.on'), ways[hash - 1]);
    }
    const found = await faults(page);
    check(found.length === 0, `${name}, ${what}: axe-core finds nothing`, found.join('\n'));
    await page.context().close();
  }
}

async function alone(browser) {
  const page = await visit(browser, write(null, 'alone', '--play', 'Lantern'), PHONE);
  check(await page.isVisible('article h1') && !await page.isVisible('.contents') && !await page.isVisible('.home'), 'one play sent alone is seen at once');
  await quiet(page, 'one play');
}

async function addresses(browser, file) {
  const page = await visit(browser, file, PHONE);
  const hash = () => page.evaluate(() => decodeURIComponent(location.hash));
  const shown = () => page.$$eval('.way.on', (all) => all.map((one) => one.id).join());
  check(await page.isVisible('.contents') && await page.$$eval('article', (all) => all.every((one) => one.offsetParent === null)), 'the list of plays comes first');
  await page.click('.contents a[href="#lantern"]');
  check(await shown() === 'lantern.1' && !await page.isVisible('.contents'), 'a play opens at its first step', await shown());
  check(await page.evaluate(() => document.activeElement.textContent) === 'Lantern', 'and is what the keyboard goes on from');
  check(await page.getAttribute('.contents a[href="#lantern"]', 'aria-current') === 'page', 'the list knows which is open');
  await page.click('.on .jump a[href="#lantern.1b"]');
  check(await shown() === 'lantern.1b' && await hash() === '#lantern.1b', 'a read opens and is in the address', await hash());
  check(await page.$eval('.on .jump [aria-current=step]', (one) => one.textContent.startsWith('1b')), 'its button is marked');
  check((await page.textContent('[role=status]')).startsWith('1b'), 'and it is told to who cannot see it');
  await page.click('.on .me button[data-me="5"]');
  check(await hash() === '#lantern.1b,p5', 'whose number it is, is in the address', await hash());
  check(await page.$$eval('.view .still .mine', (all) => all.length > 0 && all.every((one) => one.classList.contains('p5'))), 'that player is marked, and nobody else');
  check(await page.$$eval('.way.on li.mine', (all) => all.map((one) => one.textContent).join()) === '5 screens down for 3. Look for x3, not for a spot on the floor.', 'and the sentences in which she has something to do', await page.$$eval('.way.on li.mine', (all) => all.map((one) => one.textContent)));
  const astray = await page.$$eval('.way', (ways) => ways.filter((way) => {
    const lines = [...way.querySelectorAll('li .n')].map((one) => one.textContent), discs = [...way.querySelectorAll('.still .order text')].map((one) => one.textContent);
    return discs.length > 0 && (lines[0] !== discs.slice().sort((a, b) => a - b)[0] || !discs.every((disc) => lines.includes(disc)));
  }).map((way) => way.id));
  check(astray.length === 0, 'the numbers of the lines are those of the picture, from the same one on', astray);
  check(await page.isVisible('.way.on .job[data-me="5"]') && !await page.isVisible('.way.on .job[data-me="3"]'), 'her job is told, and no other');
  const address = page.url();
  const other = await visit(browser, file, PHONE, address.slice(address.indexOf('#')));
  check(await other.$$eval('.way.on', (all) => all.map((one) => one.id).join()) === 'lantern.1b' && await other.isVisible('.way.on .job.on[data-me="5"]'), 'the address alone leads there');
  await until(other, () => scrollY === 0);
  check(await other.isVisible('.view'), 'with the picture in sight');
  await other.context().close();
  await page.goBack();
  check(await shown() === 'lantern.1', 'back goes one step back', await shown());
  await page.click('.home');
  check(await page.isVisible('.contents'), 'and all plays are one touch away');
  await page.evaluate(() => { location.hash = 'no-such-play.9,3s,p99'; });
  check(await page.isVisible('.contents'), 'an address of nothing leads to the list');
  await quiet(page, 'by address');
}

// Where the numeral of a player stands in the picture, in px.
const stands = (page, number) => page.$eval(`.view .film .player.p${number} text`, (one) => {
  const box = one.getBoundingClientRect(), film = one.closest('.film').getBoundingClientRect();
  return [box.x + box.width / 2 - film.x, box.y + box.height / 2 - film.y];
});
const far = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);

async function moves(browser, file) {
  const page = await visit(browser, file, PHONE, '#lantern.1a');
  const button = (name) => page.getByRole('button', { name, exact: true });
  const pressed = async (name) => await button(name).getAttribute('aria-pressed') === 'true';
  const clock = async () => Number((await page.textContent('.clock')).split(' ')[0]);
  const whole = Number(await page.getAttribute('.way.on', 'data-seconds'));
  const slider = page.getByLabel('Time');
  const set = (value) => slider.evaluate((one, to) => { one.value = to; one.dispatchEvent(new Event('input', { bubbles: true })); one.dispatchEvent(new Event('change', { bubbles: true })); }, String(value));
  check(await page.isVisible('.view .still') && !await page.isVisible('.view .film'), 'before anybody moves the numbered diagram is seen');
  await set(0.1);
  const begin = await stands(page, 3);
  await set(whole);
  const end = await stands(page, 3);
  check(far(begin, end) > 40, 'whoever cuts is elsewhere at the end', [begin, end]);
  check(await page.isVisible('.view .film') && !await page.isVisible('.view .still'), 'and it is the moving picture that is seen');
  await set(0.1);
  check(far(await stands(page, 3), begin) < 0.5, 'time can be taken back', await stands(page, 3));
  check((await slider.getAttribute('aria-valuetext')) === `0.1 of ${whole.toFixed(1)} seconds`, 'the time line tells its time', await slider.getAttribute('aria-valuetext'));
  const links = await page.$$eval('.way.on [data-at]', (all) => all.map((one) => Number(one.dataset.at)));
  const ticks = await page.$$eval('.track i', (all) => all.map((one) => one.getBoundingClientRect().x).sort((a, b) => a - b));
  check(ticks.length === links.length + 2 && ticks[ticks.length - 1] - ticks[0] > 150, 'the time line has a tick for each sentence', ticks);
  await page.locator('.way.on [data-at]').nth(2).click();
  check(await page.$eval('.view', (one) => { const box = one.getBoundingClientRect(); return box.top >= 0 && box.bottom < innerHeight; }), 'a sentence that is touched leaves the picture in sight');
  check(Math.abs(await clock() - links[2]) < 0.06, 'a sentence leads to its moment', [await clock(), links[2]]);
  check(await page.$$eval('.way.on .now', (all) => all.length === 1 && all[0].querySelector('.n').textContent === '3' && getComputedStyle(all[0]).borderLeftWidth === '4px'), 'and is marked by a bar of 4 px');
  check(await page.getAttribute('.way.on .now a', 'aria-current') === 'step', 'for who cannot see it too');
  check(decodeURIComponent(new URL(page.url()).hash) === `#lantern.1a,${links[2]}s`, 'the moment is in the address', page.url());
  const other = await visit(browser, file, PHONE, new URL(page.url()).hash);
  check(far(await stands(other, 3), await stands(page, 3)) < 3, 'which shows the same moment elsewhere', [await stands(other, 3), await stands(page, 3), other.url(), page.url()]);
  await other.context().close();
  await set(0);
  await button('Watch').click();
  check(await pressed('Watch') && !await pressed('Pause'), 'Watch is pressed while it runs');
  await until(page, () => Number(document.querySelector('.clock').textContent.split(' ')[0]) > 0.4);
  await button('Pause').click();
  const paused = await clock();
  await page.waitForTimeout(300);
  check(await clock() === paused && await pressed('Pause'), 'Pause stops it', [paused, await clock()]);
  const speed = () => page.evaluate(async () => {
    const now = () => Number(document.querySelector('.track u').style.width.replace('%', '')), wait = () => new Promise((done) => requestAnimationFrame(done));
    await wait();
    const from = now(), began = performance.now();
    while (performance.now() - began < 900) { await wait(); }
    return (now() - from) / 100 / ((performance.now() - began) / 1000);
  });
  await set(0);
  await button('Watch').click();
  const plain = await speed() * whole;
  await set(0);
  await button('Slow').click();
  await button('Watch').click();
  const slow = await speed() * whole;
  check(plain > 0.8 && plain < 1.2, 'a second of play takes a second', plain);
  check(slow > 0.4 && slow < 0.6 && await pressed('Slow'), 'and two when it is slow', slow);
  await set(whole - 0.2);
  await button('Watch').click();
  await until(page, () => document.querySelector('.acts button').getAttribute('aria-pressed') === 'false');
  check(await clock() === Number(whole.toFixed(1)), 'it stops at its end', await clock());
  await button('Watch').click();
  await until(page, () => Number(document.querySelector('.clock').textContent.split(' ')[0]) < 1);
  check(await pressed('Watch'), 'and begins again from there');
  await slider.focus();
  const before = await clock();
  await page.keyboard.press('ArrowRight');
  check(!await pressed('Watch') && Math.abs(await clock() - before) < 0.5, 'the arrow keys move the time line and stop the film');
  await button('5').click();
  check(await page.$$eval('.view .film .mine', (all) => all.length > 1 && all.every((one) => one.classList.contains('p5'))), 'my number is marked in what moves');
  await page.click('.on .jump a[href="#lantern.2"]');
  check(await page.$$eval('.view .film .mine', (all) => all.length > 0), 'and stays so on the next step');
  await quiet(page, 'what moves');
}

// Where everybody is in the film that is seen, in metres, and whether a numeral is out of the picture.
const standings = (page) => page.evaluate(() => {
  const film = document.querySelector('.view .film'), box = film.getBoundingClientRect();
  const court = film.querySelector('use').transform.baseVal.consolidate().matrix, px = 7.39 / 0.3048;
  const at = (one) => { const to = one.transform.baseVal.consolidate().matrix; return [(to.e / 4 - court.e) / court.a / px, (to.f / 4 - court.f) / court.d / px]; };
  const places = {};
  for (const one of film.querySelectorAll('.player, .defender')) {
    places[one.classList[1].replace('p', '')] = at(one);
  }
  const outside = [...film.querySelectorAll('.player text')].filter((one) => {
    const here = one.getBoundingClientRect();
    return here.x < box.x - 1 || here.right > box.right + 1 || here.y < box.y - 4 || here.bottom > box.bottom + 4;
  });
  return { places, outside: outside.length };
});

// Every film against the run itself, as `positions` tells it: who is where at which time.
async function everyFilm(browser, file) {
  const page = await visit(browser, file, PHONE);
  const names = Object.fromEntries(await page.$$eval('.contents li a', (all) => all.map((one) => [one.getAttribute('href').slice(1), one.querySelector('bdi').textContent])));
  const outside = [], off = [];
  let worst = 0, compared = 0;
  for (const [play, ways] of await ids(page)) {
    const run = JSON.parse(execFileSync(program, ['positions', example, '--play', names[play], '--rate', '10', '-o', '-'], { maxBuffer: 1 << 28 }));
    for (const way of ways) {
      const label = way.slice(play.length + 1), segment = run.segments.find((one) => one.label === label);
      const seconds = Number(await page.getAttribute(`[id="${way}"]`, 'data-seconds'));
      for (const share of [0, 0.3, 0.6, 0.95]) {
        const sample = Math.floor(10 * share * Math.min(seconds, segment.duration));
        await page.evaluate((hash) => { location.hash = hash; }, `${way},${sample / 10}s`);
        await until(page, ([id, at]) => document.getElementById(id).matches('.on') && document.querySelector('.clock').textContent.startsWith(at), [way, (sample / 10).toFixed(1)]);
        const seen = await standings(page);
        if (seen.outside > 0) { outside.push(`${way}: ${seen.outside}`); }
        for (const [who, at] of Object.entries(seen.places)) {
          const there = segment.bodies[who === 'coach' ? 'the coach' : who][sample], gap = Math.hypot(at[0] - there[0], at[1] + run.court.baseline - there[1]);
          compared += 1;
          worst = Math.max(worst, gap);
          if (gap > (who.startsWith('x') ? 0.06 : 0.04)) { off.push(`${way} at ${sample / 10} s: ${who} is ${(100 * gap).toFixed(0)} cm off`); }
        }
      }
    }
  }
  check(outside.length === 0, 'in no film does anybody stand outside the picture', outside);
  check(off.length === 0 && compared > 1000, 'in every film everybody is where the run has them: attackers to 4 cm, defenders to 6', off.slice(0, 20).join('\n'));
  figure(`${compared} places compared with the run, the worst ${(100 * worst).toFixed(1)} cm off`);
  await quiet(page, 'all films');
}

async function searches(browser, file) {
  const page = await visit(browser, file, PHONE);
  const left = () => page.$$eval('.contents li a', (all) => all.filter((one) => one.offsetParent !== null).map((one) => one.querySelector('bdi').textContent).join());
  const all = await left();
  await page.getByLabel('Find a play').fill('SLUI');
  check(await left() === 'Sluice', 'a play is found by a piece of its name', await left());
  await page.getByLabel('Find a play').fill('late clock');
  check(await left() === 'Millrace,Windlass', 'by its tags', await left());
  await page.getByLabel('Find a play').fill('out of bounds');
  check(await left() === 'Sandbar,Towpath,Causeway,Out of the corner', 'by its chapter, and by where its ball is', await left());
  await page.getByLabel('Find a play').fill('fishing for the ball');
  check(await left() === '', 'not by a common mistake: that is for the coach alone', await left());
  for (const [words, wanted, by] of [['screen down', 'Lantern', 'the title of a step'], ['curl', 'Lantern', 'the title of a read'], ['see the rim', 'Two counts', 'a point'], ['horns', 'Windlass', 'its formation'], ['passes to 5', 'Two counts', 'the words of a sentence']]) {
    await page.getByLabel('Find a play').fill(words);
    check((await left()).split(',').includes(wanted), `by ${by}`, [words, await left()]);
  }
  await page.getByLabel('Find a play').fill('towpath');
  await page.getByLabel('Find a play').fill('to');
  const ranked = (await left()).split(','), other = ranked.findIndex((name) => !/to/i.test(name));
  check(other > 0 && /to/i.test(ranked[0]), 'whose name it is comes first', ranked);
  await page.getByLabel('Find a play').fill('qqq');
  check(await left() === '' && await page.isVisible('.none'), 'and that there is none is said', await left());
  await page.getByLabel('Find a play').fill('');
  check(await left() === all, 'an empty search shows all again');
  await quiet(page, 'search');
}

async function leadsOn(browser, file) {
  const page = await visit(browser, file, PHONE, '#lantern.1');
  const button = (name) => page.getByRole('button', { name, exact: true });
  const pressed = () => page.$$eval('.acts [aria-pressed=true]', (all) => all.map((one) => one.textContent).join());
  const slide = (share) => page.getByLabel('Time').evaluate((one, to) => { one.value = to * one.max; one.dispatchEvent(new Event('input', { bubbles: true })); }, share);
  const next = () => page.$$eval('.next a', (all) => all.filter((one) => one.offsetParent !== null).map((one) => decodeURIComponent(one.hash.slice(1))).join());
  const played = async () => { await slide(0.95); await button('Watch').click(); await page.waitForSelector('.next a', { state: 'visible' }); };
  check(await pressed() === '' && await next() === '', 'at first nothing is pressed, and nothing is next');
  await button('Slow').click();
  check(await pressed() === 'Watch,Slow', 'Slow alone begins to play, slowly', await pressed());
  await button('Pause').click();
  check(await pressed() === 'Pause,Slow', 'Pause is pressed where it was', await pressed());
  await slide(0.4);
  check(await pressed() === 'Slow', 'after the time line was moved it is not', await pressed());
  await button('Slow').click();
  check(await pressed() === '', 'Slow is a switch: off again, it plays nothing', await pressed());
  await played();
  check(await next() === 'lantern.1a,lantern.1b,lantern.1c', 'at its end a step shows its reads', await next());
  check((await page.textContent('.next')).startsWith('Next') && await fits(page) && (await small(page)).length === 0, 'simply, where a finger meets them');
  check((await faults(page)).length === 0, 'and axe-core finds nothing');
  await page.click('.next a[href="#lantern.1a"]');
  check(await page.isVisible('[id="lantern.1a"]') && await pressed() === '' && await next() === '', 'one of them is a touch away, and does not play by itself');
  await played();
  check(await next() === 'lantern.2', 'after a read the next step', await next());
  await page.click('.next a');
  await slide(0.95);
  await button('Watch').click();
  await until(page, () => document.querySelector('.acts button').getAttribute('aria-pressed') === 'false');
  check(await next() === '', 'after the last there is none', await next());
  await quiet(page, 'what is next');
}

// Where the picture stays, the sentences have room under it, also on a full court; what is next pushes them on.
async function roomForWords(browser, file) {
  for (const at of ['#lantern.1', '#causeway.1']) {
    const page = await visit(browser, file, PHONE, at);
    const box = (name) => page.$eval(name, (one) => { const box = one.getBoundingClientRect(); return [box.top, box.bottom]; });
    const [top, bottom] = await box('.view .still');
    check(bottom - top <= 0.6 * PHONE.viewport.height, `${at}: the floor is at most 60 % of the window`, bottom - top);
    check(await page.isVisible('.on .key [data-mark=ball]'), `${at}: the key tells who has the ball`);
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight / 3));
    await until(page, () => scrollY > 100 && document.querySelector('.over-words'));
    const stage = await box('.on .stage'), words = async () => (await box('.way.on li:last-of-type'))[0];
    check(Math.abs(stage[0]) < 1 && PHONE.viewport.height - stage[1] > 200, `${at}: it stays in sight, and 200 px are left`, stage);
    await page.getByLabel('Time').evaluate((one) => { one.value = 0.95 * one.max; one.dispatchEvent(new Event('input', { bubbles: true })); });
    const before = await words();
    await page.getByRole('button', { name: 'Watch', exact: true }).click();
    await page.waitForSelector('.next a', { state: 'visible' });
    await page.waitForTimeout(200);
    const grown = (await box('.on .stage'))[1] - stage[1], moved = await words() - before;
    check(grown > 40 && grown < 80 && Math.abs(moved - grown) < 2, `${at}: what is next covers no sentence`, [grown, moved]);
    check((await small(page)).length === 0 && await fits(page), `${at}: every target is 44 px or more`, await small(page));
    await quiet(page, at);
  }
}

// From the first step to the last without a touch, on one time line.
async function wholePlay(browser, file) {
  const page = await visit(browser, file, PHONE, '#lantern.1');
  const button = (name) => page.getByRole('button', { name, exact: true });
  const shown = () => page.$$eval('.way.on', (all) => all.map((one) => one.id).join());
  const total = async () => Number((await page.textContent('.clock')).split(' ')[2]);
  const lasts = (id) => page.$eval(`[id="${id}"]`, (one) => Number(one.dataset.seconds));
  const slide = (value) => page.getByLabel('Time').evaluate((one, to) => { one.value = to; one.dispatchEvent(new Event('input', { bubbles: true })); one.dispatchEvent(new Event('change', { bubbles: true })); }, value);
  const lengths = await lasts('lantern.1a') + await lasts('lantern.2');
  await button('Whole play').click();
  check(await shown() === 'lantern.1a' && await button('Watch').getAttribute('aria-pressed') === 'true', 'the whole play begins with its first step, and the read with which it goes on', await shown());
  check(Math.abs(await total() - lengths) < 0.11, 'the time line is that of all its steps', [await total(), lengths]);
  check(await page.$$eval('.track b', (all) => all.length) === 1, 'with a mark where the next one begins');
  await slide(await lasts('lantern.1a') - 0.3);
  const before = await standings(page);
  await button('Watch').click();
  await until(page, () => document.querySelector('[id="lantern.2"]').matches('.on'));
  const after = await standings(page);
  check(await button('Watch').getAttribute('aria-pressed') === 'true' && await button('Pause').getAttribute('aria-pressed') === 'false', 'the next step goes on without a touch');
  check(Object.keys(before.places).every((who) => far(before.places[who], after.places[who]) < 4.5), 'and nobody jumps', [before.places, after.places]);
  check(await page.$eval('.on .jump [aria-current=step]', (one) => one.textContent.trim().endsWith('2')), 'the button of the step that is seen is marked');
  await until(page, () => document.querySelector('.acts button').getAttribute('aria-pressed') === 'false');
  check(Math.abs(Number((await page.textContent('.clock')).split(' ')[0]) - lengths) < 0.11, 'it stops at the end of the last', await page.textContent('.clock'));
  const pressed = () => button('Whole play').getAttribute('aria-pressed');
  check(await pressed() === 'false', 'its button is not pressed any more');
  await button('Whole play').click();
  check(await shown() === 'lantern.1a' && await pressed() === 'true', 'and begins it again', await shown());
  await slide(lengths - 0.2);
  await button('Watch').click();
  await until(page, () => document.querySelector('.acts button').getAttribute('aria-pressed') === 'false');
  check(/^#lantern\.2,all,/.test(decodeURIComponent(new URL(page.url()).hash)), 'that it is the whole play is in the address', page.url());
  await slide(1);
  check(await shown() === 'lantern.1a' && (await page.getAttribute('.stage input', 'aria-valuetext')).startsWith('Step 1, 1.0 of'), 'the time line goes back over steps', await page.getAttribute('.stage input', 'aria-valuetext'));
  const other = await visit(browser, file, PHONE, new URL(page.url()).hash);
  check(await other.getByRole('button', { name: 'Whole play', exact: true }).getAttribute('aria-pressed') === 'true' && (await other.textContent('.clock')).startsWith('1.0 of 10'), 'the address alone shows the same', await other.textContent('.clock'));
  await other.context().close();
  await page.click('.on .jump a[href="#lantern.1b"]');
  check(await shown() === 'lantern.1b' && Math.abs(await total() - await lasts('lantern.1b')) < 0.06, 'with another read it is the play with that one', [await shown(), await total()]);
  await page.click('.on .jump a[href="#lantern.2"]');
  check(await shown() === 'lantern.2' && Math.abs(await total() - lengths) < 0.11, 'and the step that goes on from the first has that before it', [await shown(), await total()]);
  await button('Whole play').click();
  check(await shown() === 'lantern.2' && Math.abs(await total() - await lasts('lantern.2')) < 0.06, 'off again, the time line is that of the step', await total());
  check((await faults(page)).length === 0 && (await small(page)).length === 0, 'axe-core finds nothing, and every target is 44 px or more');
  await page.evaluate(() => { location.hash = 'windlass.1'; });
  await until(page, () => document.querySelector('[id="windlass.1"]').matches('.on'));
  check(!await button('Whole play').isVisible(), 'a play of one step has no such button');
  await quiet(page, 'a whole play');
}

// Reads in two steps after each other: the whole play with the one that was chosen in the second.
const FERRYMAN = `play "Ferryman"
  start five-out
  ball 1
  defense man
  step "First"
    1 passes to 2
    read x3 trails "Curl"
      3 cuts to the rim
    read otherwise "Stay"
      3 goes to left short corner
  step "Second"
    2 passes to 1
    read x4 trails "Back"
      4 cuts to the rim
    read otherwise "Wait"
      4 goes to right short corner
  step "Third"
    1 passes to 2
`;

async function wholeReads(browser) {
  const page = await visit(browser, write(FERRYMAN, 'ferryman'), PHONE, '#ferryman.2b,all');
  const lasts = (id) => page.$eval(`[id="ferryman.${id}"]`, (one) => Number(one.dataset.seconds));
  const clock = async () => (await page.textContent('.clock')).split(' ').map(Number);
  const first = await lasts('1a'), [from, , whole] = await clock();
  check(Math.abs(from - first) < 0.11 && Math.abs(whole - first - await lasts('2b')) < 0.11, 'a read of the second step has the first before it, and ends the play', [from, whole]);
  await page.click('.jump a[href="#ferryman.3"]');
  const [third, , all] = await clock();
  check(Math.abs(all - first - await lasts('2a') - await lasts('3')) < 0.16 && third > first, 'the third step has those before it with which it goes on', [third, all]);
  await page.click('.jump a[href="#ferryman.2"]');
  check(await page.isVisible('[id="ferryman.2a"].on'), 'a step with reads is seen with the one that is in the play');
  await page.getByRole('button', { name: 'Whole play', exact: true }).click();
  await page.click('.jump a[href="#ferryman.2"]');
  await page.getByRole('button', { name: 'Watch', exact: true }).click();
  await page.getByRole('button', { name: 'Whole play', exact: true }).click();
  check(await page.isVisible('[id="ferryman.2a"].on') && (await clock())[0] > first - 0.1, 'and where it runs already, it goes on from there', await clock());
  await quiet(page, 'reads in a whole play');
}

async function practices(browser, file) {
  const page = await visit(browser, file, PHONE);
  await page.getByLabel('Find a play').fill('north basket');
  check(await page.$$eval('.contents li a', (all) => all.filter((one) => one.offsetParent !== null).map((one) => one.textContent).join()) === 'Week 3, Tuesday', 'a practice is found by its words');
  await page.getByLabel('Find a play').fill('');
  await page.click('.contents a[href="#week-3-tuesday"]');
  check(await page.isVisible('#week-3-tuesday h1') && !await page.isVisible('.stage .view') && decodeURIComponent(new URL(page.url()).hash) === '#week-3-tuesday', 'a practice opens, and is in the address', page.url());
  const rows = await page.$$eval('#week-3-tuesday tbody tr', (all) => all.map((row) => [...row.children].map((cell) => cell.textContent.trim())));
  check(rows.length === 10 && rows[0][0] === '5:30' && rows[0][1] === '10' && /^Warm-up: /.test(rows[0][2].replace(/[\u2068\u2069]/g, '')), 'with clock, minutes and what is done', rows[0]);
  check(rows[6][2].includes('Find x3, stop on two feet') && rows[4][2].includes('North basket') && rows[9][2].includes('fits the time booked'), 'the coach\'s points, its stations, and what it adds up to', [rows[6], rows[4], rows[9]]);
  check((await faults(page)).length === 0 && (await small(page)).length === 0 && await fits(page), 'axe-core finds nothing, a finger meets all of it, nothing stands out at the side', [await faults(page), await small(page)]);
  await page.click('#week-3-tuesday a[href="#lantern"]');
  check(await page.isVisible('[id="lantern.1"]') && await page.isVisible('.view'), 'a play in it is a touch away');
  await page.goBack();
  check(await page.isVisible('#week-3-tuesday h1') && !await page.isVisible('.view'), 'and back');
  await page.emulateMedia({ media: 'print' });
  check(await page.$$eval('article', (all) => all.filter((one) => one.offsetParent !== null).map((one) => one.id).join()) === 'week-3-tuesday', 'it is printed alone');
  await quiet(page, 'a practice');
}

async function looks(browser, file) {
  const ground = (page) => page.$eval('body', (one) => getComputedStyle(one).backgroundColor);
  const night = await visit(browser, file, { ...PHONE, colorScheme: 'dark' });
  check(await ground(night) === 'rgb(18, 22, 25)', 'who reads in the dark gets it dark', await ground(night));
  await night.getByRole('button', { name: 'Light' }).click();
  check(await ground(night) === 'rgb(255, 255, 255)', 'and light at a touch', await ground(night));
  await night.getByRole('button', { name: 'Dark' }).click();
  check(await ground(night) === 'rgb(18, 22, 25)', 'and dark again', await ground(night));
  await night.evaluate(() => { location.hash = 'lantern.1'; });
  await night.emulateMedia({ media: 'print' });
  check(await ground(night) === 'rgb(255, 255, 255)', 'paper is white', await ground(night));
  check(await night.$$eval('#lantern .way', (all) => all.length === 5 && all.every((one) => one.querySelector('.still').getBoundingClientRect().width > 100)), 'and has every step and read of the play that is open');
  check(await night.$$eval('article', (all) => all.filter((one) => one.offsetParent !== null).map((one) => one.id).join()) === 'lantern', 'and of no other');
  const paper = await night.pdf({ format: 'Letter' });
  check(paper.length > 10000, 'it prints');
  await quiet(night, 'dark and paper');
}

async function scriptless(browser, file) {
  for (const [what, options] of [['a phone', PHONE], ['a desk', DESK]]) {
    const page = await visit(browser, file, { ...options, javaScriptEnabled: false });
    const counted = async (what) => (await page.locator(what).all()).length;
    const shown = async (what) => { let seen = 0; for (const one of await page.locator(what).all()) { seen += await one.isVisible() ? 1 : 0; } return seen; };
    check(await counted('.way .still') > 20 && await shown('.way .still') === await counted('.way .still'), `without its script every diagram stands there on ${what}`);
    check(await shown('.care') === await counted('article') && await shown('.key') === await counted('article:not(.plan)'), `with caution and key on ${what}`);
    check(await shown('.bar, .search, .me, .job') === 0, `and nothing that would need it on ${what}`);
    await quiet(page, `without script on ${what}`);
  }
}

async function keyboard(browser, file) {
  const page = await visit(browser, file, PHONE, '#lantern.1');
  const reached = new Set();
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press('Tab');
    reached.add(await page.evaluate(() => { const at = document.activeElement; return at.tagName + ' ' + (at.getAttribute('href') || at.dataset.me || at.textContent || at.getAttribute('aria-label')); }));
  }
  for (const wanted of ['A #', 'BUTTON Dark', 'A #lantern.1a', 'A #lantern.2', 'BUTTON 1', 'BUTTON 5']) {
    check(reached.has(wanted), `the keyboard reaches ${wanted}`, [...reached].join('\n'));
  }
  await quiet(page, 'keyboard');
}

async function valid(file, name) {
  const { HtmlValidate } = require('html-validate');
  const checker = new HtmlValidate({ extends: ['html-validate:recommended'], rules: { 'valid-id': ['error', { relaxed: true }], 'long-title': 'off' } });
  const report = await checker.validateFile(file);
  const found = report.results.flatMap((one) => one.messages.map((said) => `${said.line}: ${said.ruleId}: ${said.message}`));
  check(found.length === 0, `${name} is valid HTML`, found.slice(0, 20).join('\n'));
}

function sizes(file) {
  const text = fs.readFileSync(file, 'utf8');
  const plays = text.match(/<article [^>]*aria[^]*?<\/article>/g).filter((one) => !one.includes('class="plan"')).map((one) => [Buffer.byteLength(one), /id="([^"]*)"/.exec(one)[1]]).sort((a, b) => b[0] - a[0]);
  const whole = Buffer.byteLength(text), rest = whole - plays.reduce((sum, [size]) => sum + size, 0);
  figure(`the example book is ${(whole / 1000).toFixed(0)} kB: ${plays.length} plays of ${(plays[Math.floor(plays.length / 2)][0] / 1000).toFixed(1)} kB in the middle, ${plays[0][1]} the largest with ${(plays[0][0] / 1000).toFixed(1)} kB, and ${(rest / 1000).toFixed(1)} kB once`);
  check(plays.every(([size]) => size < 60000), 'every play of the example book is under 60 kB', plays.slice(0, 4));
  const kinds = new Set(text.match(/href="#court\.[a-z0-9-]+"/g)).size;
  check((text.match(/<g id="court\./g) || []).length === kinds, 'each court stands there once');
}

async function main(browser) {
  const kites = write(null, 'kites'), hard = write(HARD, 'hard', '--names');
  sizes(kites);
  for (const [file, name] of [[kites, 'the example book'], [hard, 'a hard book']]) {
    await valid(file, name);
    await everyWay(browser, file, PHONE, `${name} on a phone`);
    await everyWay(browser, file, DESK, `${name} on a desk`);
    await accessible(browser, file, name, file === kites ? WHOLE : EVERY); // a long book takes long, and its other looks are those of one play
  }
  check(!fs.readFileSync(kites, 'utf8').includes('Imke'), 'nobody is named in a page to be passed on');
  check(/Maximiliane/.test(fs.readFileSync(hard, 'utf8')), 'names stand there when asked for');
  await accessible(browser, write(null, 'one', '--play', 'Lantern'), 'one play', EVERY);
  await alone(browser);
  await addresses(browser, kites);
  await moves(browser, kites);
  await everyFilm(browser, kites);
  await searches(browser, kites);
  await leadsOn(browser, kites);
  await wholePlay(browser, kites);
  await roomForWords(browser, kites);
  await wholeReads(browser);
  await practices(browser, kites);
  await looks(browser, kites);
  await scriptless(browser, kites);
  await keyboard(browser, kites);
}

run(main);
