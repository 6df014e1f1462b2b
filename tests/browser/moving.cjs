// SPDX-License-Identifier: MIT
// Plays that move, in a real browser: at any time the players and the ball are where `positions` has them; the still
// stands on paper and for less motion; an image moves too; once or again and again. Usage: moving.cjs PROGRAM EXAMPLES
'use strict';
const { execFileSync } = require('node:child_process');
const fs = require('node:fs');
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const { check, figure, folder, start, run, open, eventually } = require('./browser.cjs');

const [program, examples] = process.argv.slice(2);
const BEFORE = 1.0, AFTER = 1.5; // s for which the picture stands: courtwright.h
const LANE = 12 * 0.3048; // m: the lane of a high school, from edge to edge
const PLAYER_OFF = 0.04, DEFENDER_OFF = 0.06, BALL_OFF = 0.04; // m

function made(name, book, ...words) {
  const file = path.join(folder, name);
  try {
    execFileSync(program, ['animate', path.join(examples, book), ...words, '-o', file], { stdio: 'pipe' });
  } catch (error) {
    if (error.status !== 1) { throw error; } // 1: findings, which are another matter
  }
  return file;
}

function durations(file) {
  return fs.readFileSync(file, 'utf8').match(/dur="[\d.]+"/g).map((one) => Number(one.slice(5, -1)));
}

function longest(file) { return Math.max(...durations(file)); }

function positions(book, play) {
  const words = ['positions', path.join(examples, book), '--play', play, '--rate', '100'];
  return JSON.parse(execFileSync(program, words, { maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'pipe'] }).toString());
}

// Everybody's place on the floor at a time of the picture, metres; the floor is told by its ring and its lane.
function look({ t, lane }) {
  const svg = document.documentElement;
  svg.pauseAnimations();
  svg.setCurrentTime(t);
  const ring = svg.querySelector('.basket circle');
  const scale = lane / svg.querySelector('.f-lane').getBBox().width;
  const whole = svg.querySelector('.basket').getScreenCTM().inverse(); // in a window of its own it is as large as that
  const place = (element) => {
    const at = whole.multiply(element.getScreenCTM());
    return [(at.e - ring.cx.baseVal.value) * scale, (at.f - ring.cy.baseVal.value) * scale];
  };
  const shown = (element) => getComputedStyle(element).display !== 'none';
  const bodies = {};
  for (const group of svg.querySelectorAll('.moving .player, .moving .defender')) {
    const [, who] = group.getAttribute('class').split(' ');
    bodies[who.replace('p', '')] = place(group);
  }
  // the ring has a stroke, the ball in the air has none; who is nearest to the ring has the ball
  const balls = [...svg.querySelectorAll('.moving g.ball')].filter(shown);
  const far = (who, at) => Math.hypot(bodies[who][0] - at[0], bodies[who][1] - at[1]);
  const holder = balls.filter((group) => group.querySelector('circle.s-ink')).map(place)
    .map((at) => Object.keys(bodies).filter((who) => !who.startsWith('x') && far(who, at) < 0.02).join());
  const ball = balls.filter((group) => !group.querySelector('circle.s-ink')).map(place);
  return { bodies, holder, ball };
}

function apart(a, b) { return Math.hypot(a[0] - b[0], a[1] - b[1]); }

// How far the picture is from the run, over one diagram; `late`: seconds by which it is looked at too late.
async function compare(page, segment, late, end) {
  const off = { player: 0, defender: 0, ball: 0, holders: 0, looks: 0, flights: 0 };
  for (let i = 7; i < segment.times.length && segment.times[i] + late < end; i += 23) {
    const now = await page.evaluate(look, { t: BEFORE + segment.times[i] + late, lane: LANE });
    for (const [who, track] of Object.entries(segment.bodies)) {
      const kind = who.startsWith('x') ? 'defender' : 'player';
      const there = now.bodies[who === 'the coach' ? 'coach' : who];
      off[kind] = Math.max(off[kind], there ? apart(there, track[i]) : 99);
    }
    off.looks += 1;
    const holder = segment.holder[i], soon = [i - 5, i + 5].every((k) => segment.holder[k] === holder);
    if (!soon) { continue; } // it changes hands within a tick of this
    off.holders += now.holder.join() === (holder === null ? '' : holder) ? 0 : 1;
    if (holder === null) {
      off.flights += 1;
      off.ball = Math.max(off.ball, now.ball.length === 1 ? apart(now.ball[0], segment.ball[i]) : 99);
    }
  }
  return off;
}

async function where_the_run_has_them(browser) {
  const shown = [['kites/kites.play', 'Lantern', '1'], ['kites/kites.play', 'Lantern', '2'], ['topics/ball-screen.play', 'Four answers', '1b'],
    ['topics/cross-screen.play', 'Cross screen', '1'], ['kites/kites.play', 'Sandbar', '1'], ['kites/kites.play', 'Floodgate', '1']];
  const most = { player: 0, defender: 0, ball: 0 };
  let flights = 0;
  for (const [book, play, label] of shown) {
    const all = positions(book, play);
    const segment = all.segments.find((one) => one.label === label);
    made('film-{step}.svg', book, '--play', play, '--step', label); // of its reads, too
    const file = path.join(folder, `film-${label}.svg`);
    if (!check(segment !== undefined, `${play} has a diagram ${label}`)) { continue; }
    const page = await open(browser, pathToFileURL(file).href, {}, (url) => url.startsWith('file:'));
    const end = longest(file) - BEFORE - AFTER; // before its reads, a step stops as they are answered
    const off = await compare(page, segment, 0, end), wrong = await compare(page, segment, 0.5, end);
    flights += off.flights;
    for (const kind of Object.keys(most)) { most[kind] = Math.max(most[kind], off[kind]); }
    check(off.player < PLAYER_OFF && off.defender < DEFENDER_OFF, `${play} ${label}: everybody is where the run has them`, off);
    check(wrong.player > 3 * PLAYER_OFF, `${play} ${label}: half a second late would be seen`, wrong);
    check(off.holders === 0 && off.ball < BALL_OFF && off.looks > 4, `${play} ${label}: the ball is where the run has it`, off);
    check(page.errors.length === 0 && page.asked.length === 0, `${play} ${label}: no error, and nothing is asked for`, page.errors);
    await page.context().close();
  }
  check(flights > 5, 'the ball was met in the air', flights);
  figure(`at most off the run: attackers ${(100 * most.player).toFixed(1)} cm, defenders ${(100 * most.defender).toFixed(1)} cm, ball in the air ${(100 * most.ball).toFixed(1)} cm`);
}

function shown_copies() {
  const shown = (name) => getComputedStyle(document.querySelector(name)).display !== 'none';
  return { still: shown('.still'), moving: shown('.moving') };
}

async function one_of_two_copies(browser, file) {
  const address = pathToFileURL(file).href, files = (url) => url.startsWith('file:');
  const page = await open(browser, address, {}, files);
  const usual = await page.evaluate(shown_copies);
  check(!usual.still && usual.moving, 'where it can move it moves, and the still gives way', usual);
  await page.emulateMedia({ media: 'print' });
  const paper = await page.evaluate(shown_copies);
  check(paper.still && !paper.moving, 'on paper the still stands', paper);
  await page.emulateMedia({ media: 'screen', reducedMotion: 'reduce' });
  const calm = await page.evaluate(shown_copies);
  check(calm.still && !calm.moving, 'for less motion the still stands', calm);
  await page.context().close();
}

// In a window of its own it is as large as that; in an image it has its own size.
async function large_alone(browser, file) {
  const page = await open(browser, pathToFileURL(file).href, { viewport: { width: 900, height: 700 } }, (url) => url.startsWith('file:'));
  const box = await page.evaluate(() => { const floor = document.querySelector('.f-floor').getBoundingClientRect(); return [floor.left, floor.right, floor.bottom]; });
  check(box[1] - box[0] > 880 && box[2] <= 700, 'alone in a window it fills that', box);
  const html = path.join(folder, 'size.html');
  fs.writeFileSync(html, `<!doctype html><title>An image</title><img alt="moving" src="${path.basename(file)}">`);
  await page.goto(pathToFileURL(html).href);
  const wide = await page.$eval('img', (one) => [one.width, one.naturalWidth]);
  check(wide[0] === 238 && wide[1] === 238, 'in an image it is as wide as it says', wide);
  await page.context().close();
}

// An image has no script and gives no clock: it is looked at until it is another picture.
async function image_moves(browser, file) {
  const context = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 400, height: 300 } });
  const page = await context.newPage();
  const html = path.join(folder, 'image.html');
  fs.writeFileSync(html, `<!doctype html><title>An image</title><img alt="moving" src="${path.basename(file)}">`);
  await page.goto(pathToFileURL(html).href); // until the image is loaded
  const first = await page.screenshot();
  check(await eventually(async () => !first.equals(await page.screenshot())), 'it moves in an image');
  await context.close();
}

// Who has told the whole machine that less should move: an image stands still, and its numbered diagram is seen.
async function image_stands_still(file) {
  const browser = await start('--force-prefers-reduced-motion');
  const page = await (await browser.newContext({ reducedMotion: null, viewport: { width: 400, height: 300 } })).newPage();
  const html = path.join(folder, 'calm.html');
  fs.writeFileSync(html, `<!doctype html><title>An image</title><img alt="moving" src="${path.basename(file)}">`);
  await page.goto(pathToFileURL(html).href);
  const shots = [];
  for (let i = 0; i < 4; i++) {
    shots.push(await page.screenshot());
    await page.waitForTimeout(700);
  }
  check(shots.every((one) => one.equals(shots[0])), 'for who wants less motion an image stands still');
  await browser.close();
}

async function once_or_again(browser) {
  const book = 'topics/cross-screen.play';
  for (const loop of [false, true]) {
    const file = made(loop ? 'again.svg' : 'once.svg', book, ...(loop ? ['--loop'] : []));
    const page = await open(browser, pathToFileURL(file).href, {}, (url) => url.startsWith('file:'));
    const duration = longest(file);
    const at = async (t) => page.evaluate(look, { t, lane: LANE });
    const [then, later, end] = [await at(3), await at(duration + 3), await at(duration - 0.01)];
    const gone = (a, b) => Math.max(...Object.keys(a.bodies).map((who) => apart(a.bodies[who], b.bodies[who])));
    if (loop) {
      check(gone(then, later) < 0.01 && then.holder.join() === later.holder.join(), 'with --loop it begins again', [then, later]);
      check(durations(file).every((one) => one === duration), 'with --loop nothing can drift apart', durations(file));
    } else {
      check(gone(end, later) < 0.01 && gone(then, later) > 1, 'played once, the end stays', [end, later]);
    }
    await page.context().close();
  }
}

async function main(browser) {
  const file = made('lantern.svg', 'kites/kites.play', '--play', 'Lantern');
  await where_the_run_has_them(browser);
  await one_of_two_copies(browser, file);
  await large_alone(browser, file);
  await image_moves(browser, file);
  await image_stands_still(file);
  await once_or_again(browser);
}

run(main);
