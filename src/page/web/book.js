/* SPDX-License-Identifier: MIT */
/* The phone book's script: one play, step or read at a time; time, slow, scrub; search; whose number.
 * What is seen is told by the address: #PLAY.STEP,all,SECONDSs,pNUMBER, so that any of it can be linked. */
'use strict';
document.documentElement.classList.add('js'); /* at once: nothing is laid out that will not be seen */
document.addEventListener('DOMContentLoaded', () => {
  const root = document.documentElement;
  const all = (from, what) => Array.from(from.querySelectorAll(what));
  const one = (from, what) => from.querySelector(what);
  const make = (name, words) => Object.assign(document.createElement(name), words);
  const contents = one(document, '.contents');
  const told = document.getElementById('page.told');
  const dark = document.getElementById('page.dark');
  const find = document.getElementById('page.find');
  const seen = { article: null, way: null, time: 0, begun: false, touched: null, me: 0, moving: null, whole: false, parts: [], part: 0, playing: false, paused: false, ended: false, rate: 1, last: 0 };
  let stage = null;

  /* ---- the address ---- */

  function read(hash) {
    let text = '';
    try { text = decodeURIComponent(hash.slice(1)); } catch (error) { text = ''; }
    const parts = text.split(',');
    const at = document.getElementById(parts[0]);
    const place = { element: at && at.matches('article, .way') ? at : null, time: null, me: null, whole: parts.includes('all') };
    for (const part of parts.slice(1)) {
      const time = /^(\d+(?:\.\d+)?)s$/.exec(part), me = /^p(\d+)$/.exec(part);
      if (time) { place.time = Number(time[1]); }
      if (me) { place.me = Number(me[1]); }
    }
    return place;
  }

  function write(push) {
    const parts = [seen.way ? seen.way.id : seen.article ? seen.article.id : ''];
    if (seen.way && seen.whole) { parts.push('all'); }
    if (seen.way && seen.begun) { parts.push(Number(seen.time.toFixed(2)) + 's'); }
    if (seen.me) { parts.push('p' + seen.me); }
    const hash = '#' + parts.join(',');
    try { history[push ? 'pushState' : 'replaceState'](null, '', hash); } catch (error) { /* a place that keeps no addresses */ }
  }

  /* ---- what moves: a film is rows of numbers (film.h says which), its marks are pieces of the play's cast ---- */

  /* A row of keys, each as the difference to the one before: [[time, value, ...], ...]. */
  function keysOf(row, size) {
    const keys = [];
    for (let i = 0; row && i < row.length; i += size) {
      keys.push(row.slice(i, i + size).map((value, k) => value + (i > 0 ? keys[keys.length - 1][k] : 0)));
    }
    return keys;
  }

  /* The values at a time; between two keys everything goes straight, before and after them it stands. */
  function valuesAt(keys, time) {
    let next = 0;
    while (next < keys.length && keys[next][0] <= time) { next += 1; }
    const a = keys[Math.max(next - 1, 0)], b = keys[Math.min(next, keys.length - 1)];
    const share = b[0] > a[0] ? Math.min(Math.max((time - a[0]) / (b[0] - a[0]), 0), 1) : 0;
    return a.slice(1).map((value, k) => value + share * (b[k + 1] - value));
  }

  /* Calls set with the values at a time; what never changes is set once. */
  function follow(keys, set, moves) {
    if (keys.length > 1) { moves.push((time) => set(valuesAt(keys, time))); } else if (keys.length === 1) { set(keys[0].slice(1)); }
  }

  function appear(shows, element, moves) {
    if (!shows) { return; }
    moves.push((time) => {
      let shown = false;
      for (let i = 0; i < shows.length; i += 2) { shown = shown || (time >= shows[i] && time < shows[i + 1]); }
      element.setAttribute('visibility', shown ? 'visible' : 'hidden');
    });
  }

  /* The picture and what brings it to a time. */
  function filmOf(way, article) {
    const cast = one(article, '.cast').content.firstElementChild.children, still = one(way, '.still');
    const [tick, ...groups] = JSON.parse(way.dataset.film), moves = [];
    const film = still.cloneNode(false), quarters = document.createElementNS(film.namespaceURI, 'g');
    film.setAttribute('class', 'floor film');
    quarters.setAttribute('transform', 'scale(.25)');
    film.append(one(still, 'use').cloneNode(true), quarters);
    for (const [frame, path, gone, shows, ...marks] of groups) {
      const group = cast[frame].cloneNode(true);
      follow(keysOf(path, 3), (at) => group.setAttribute('transform', 'translate(' + at.join(' ') + ')'), moves);
      follow(keysOf(gone, 2), (at) => group.setAttribute('stroke-dashoffset', -at[0]), moves);
      if (gone) { group.setAttribute('stroke-dasharray', '100 200'); }
      appear(shows, group, moves);
      for (const [paint, drawn, seenAt, ends] of marks) {
        const mark = cast[paint].cloneNode(true), shape = cast[drawn].cloneNode(true);
        if (gone) { shape.setAttribute('pathLength', 100); }
        follow(keysOf(ends, 3), (at) => { shape.setAttribute('x2', at[0]); shape.setAttribute('y2', at[1]); }, moves);
        appear(seenAt, mark, moves);
        mark.append(shape);
        group.append(mark);
      }
      quarters.append(group);
    }
    return { film, show: (seconds) => { for (const move of moves) { move(seconds / tick); } } };
  }

  /* ---- time ---- */

  const length = (way) => Number(way.dataset.seconds);
  const isRead = (way) => 'read' in way.dataset;
  const inStep = (way) => all(way.closest('article'), '.way').filter((other) => other.dataset.step === way.dataset.step);

  /* What is seen of a step in the whole play: the read that was chosen before, else the one with which the play goes on. */
  function toldBy(way) {
    const reads = isRead(way) ? [] : inStep(way).filter(isRead);
    const before = seen.parts.map((part) => part.way);
    return reads.find((read) => before.includes(read)) || reads.find((read) => 'main' in read.dataset) || reads[0] || way;
  }

  /* The whole play with this step or read in it: what led there, and what follows. */
  function chain(way) {
    const ways = [toldBy(way)], others = all(way.closest('article'), '.way');
    while (ways[0].dataset.before) { ways.unshift(toldBy(document.getElementById(ways[0].dataset.before))); }
    const follows = () => others.find((other) => other.dataset.before === ways[ways.length - 1].id);
    for (let next = follows(); next; next = follows()) { ways.push(toldBy(next)); }
    return ways;
  }

  /* Marks on the time line: where sentences begin, and where one part goes on from another. */
  function markTimes(whole) {
    const mark = (name, at) => {
      const made = make(name, {});
      made.style.left = whole > 0 ? 100 * at / whole + '%' : '0';
      return made;
    };
    const begins = seen.parts.flatMap((part) => all(part.way, '[data-at]').map((link) => part.from + Math.min(Number(link.dataset.at), part.seconds)));
    stage.ticks.replaceChildren(...[0, whole, ...begins].map((at) => mark('i', at)), ...seen.parts.slice(1).map((part) => mark('b', part.from)));
  }

  /* The parts of what is watched, each from where on the time line, and how long until the next goes on from it. */
  function lay() {
    const ways = seen.whole ? chain(seen.way) : [seen.way];
    let from = 0;
    seen.parts = ways.map((way, i) => {
      const part = { way, from, seconds: Math.min(length(way), i + 1 < ways.length ? Number(ways[i + 1].dataset.begins) : Infinity) };
      from += part.seconds;
      return part;
    });
    seen.part = Math.max(0, ways.indexOf(toldBy(seen.way)));
    stage.slider.max = from;
    markTimes(from);
    stage.all.hidden = chain(seen.way).length < 2;
    onward();
  }

  const now = () => seen.parts[seen.part];
  const atEnd = () => seen.part + 1 >= seen.parts.length && seen.time >= now().seconds;

  function show() {
    if (!seen.way) { return; }
    const part = now(), whole = Number(stage.slider.max), time = part.from + Math.min(seen.time, part.seconds), links = all(seen.way, '[data-at]');
    if (seen.moving && seen.begun) { seen.moving.show(Math.min(seen.time, length(seen.way))); }
    stage.classList.toggle('running', seen.begun);
    stage.slider.value = time;
    stage.slider.setAttribute('aria-valuetext', (seen.parts.length > 1 ? 'Step ' + seen.way.dataset.step + ', ' : '') + time.toFixed(1) + ' of ' + whole.toFixed(1) + ' seconds');
    stage.done.style.width = whole > 0 ? 100 * time / whole + '%' : '0';
    stage.clock.textContent = time.toFixed(1) + ' of ' + whole.toFixed(1) + ' s';
    let last = null;
    for (const link of links) {
      const at = Number(link.dataset.at);
      const later = !last || at > Number(last.dataset.at) || (at === Number(last.dataset.at) && last !== seen.touched);
      if (seen.begun && at <= seen.time + 0.05 && later) { last = link; }
    }
    for (const link of links) {
      link.parentElement.classList.toggle('now', link === last);
      if (link === last) { link.setAttribute('aria-current', 'step'); } else { link.removeAttribute('aria-current'); }
    }
    stage.watch.setAttribute('aria-pressed', String(seen.playing));
    stage.pause.setAttribute('aria-pressed', String(seen.paused && !seen.playing && !atEnd()));
    stage.all.setAttribute('aria-pressed', String(seen.whole && !seen.ended));
    stage.slow.setAttribute('aria-pressed', String(seen.rate < 1));
    stage.next.hidden = !seen.ended || stage.next.childElementCount < 2;
  }

  /* What is next is told, and brought in sight where the buttons over it are. */
  function offer() {
    if (stage.next.hidden) { return; }
    const box = stage.acts.getBoundingClientRect(), low = stage.next.getBoundingClientRect().bottom > innerHeight;
    told.textContent = all(stage.next, 'span, a').filter((part) => part.parentElement === stage.next).map((part) => part.textContent).join(', ');
    if (low && box.top >= 0 && box.bottom <= innerHeight) { stage.next.scrollIntoView({ block: 'nearest' }); }
  }

  /* To another part of what is watched, which goes on. */
  function turn(index, time) {
    const { playing, paused, begun } = seen;
    choose(seen.parts[index].way, time);
    Object.assign(seen, { playing, paused, begun });
    show();
  }

  function tick(at) {
    if (!seen.playing) { return; }
    seen.time += seen.rate * Math.max(0, at - seen.last) / 1000;
    seen.last = at;
    const over = seen.time - now().seconds;
    if (over < 0) {
      show();
    } else if (seen.part + 1 < seen.parts.length) {
      turn(seen.part + 1, over);
      write(false);
    } else {
      seen.time = now().seconds;
      seen.ended = true;
      stop();
      offer();
    }
    requestAnimationFrame(tick);
  }

  function stop() {
    const was = seen.playing;
    seen.playing = false;
    show();
    if (was) { write(false); }
  }

  function watch() {
    if (atEnd()) { turn(0, 0); }
    seen.begun = true;
    seen.paused = seen.ended = false;
    seen.last = performance.now();
    if (!seen.playing) { requestAnimationFrame(tick); }
    seen.playing = true;
    show();
  }

  /* All steps after each other, from the beginning, also where they have just been seen; off again, the one that is seen. */
  function wholePlay() {
    seen.whole = !seen.whole || seen.ended;
    seen.ended = false;
    lay();
    if (seen.whole && !seen.playing) {
      turn(0, 0);
      watch();
    } else if (now().way !== seen.way) {
      turn(seen.part, seen.time);
    }
    show();
    write(false);
  }

  /* The time line was moved. */
  function slide() {
    const at = Number(stage.slider.value);
    let index = 0;
    while (index + 1 < seen.parts.length && at >= seen.parts[index + 1].from) { index += 1; }
    const time = at - seen.parts[index].from;
    if (index !== seen.part) { turn(index, time); }
    Object.assign(seen, { playing: false, paused: false, ended: false, time, begun: at > 0 });
    show();
  }

  /* ---- the stage: picture, time line, buttons; one for all plays, where the play is ---- */

  function button(words, act) {
    const made = make('button', { type: 'button', textContent: words });
    made.addEventListener('click', act);
    return made;
  }

  function build() {
    stage = make('div', {});
    stage.view = make('div', { className: 'view' });
    stage.view.setAttribute('role', 'img');
    stage.slider = make('input', { type: 'range', min: '0', step: '0.1' });
    stage.slider.setAttribute('aria-label', 'Time');
    stage.slider.addEventListener('input', slide);
    stage.slider.addEventListener('change', () => write(false));
    stage.done = make('u', {});
    stage.ticks = make('span', {});
    stage.clock = make('span', { className: 'clock' });
    stage.clock.setAttribute('aria-hidden', 'true');
    const track = make('div', { className: 'track' });
    track.append(stage.ticks, stage.done, stage.slider);
    stage.time = make('div', { className: 'time' });
    stage.time.append(track, stage.clock);
    stage.watch = button('Watch', watch);
    stage.pause = button('Pause', () => { seen.paused = seen.playing; stop(); });
    stage.slow = button('Slow', () => { seen.rate = seen.rate < 1 ? 1 : 0.5; if (seen.rate < 1 && !seen.playing) { watch(); } else { show(); } });
    stage.acts = make('div', { className: 'acts' });
    stage.all = button('Whole play', wholePlay);
    stage.acts.append(stage.watch, stage.pause, stage.slow, stage.all);
    stage.next = make('nav', { className: 'next chips', hidden: true });
    stage.next.setAttribute('aria-label', 'What is next');
    stage.append(stage.view, stage.time, stage.acts, stage.next);
  }

  /* Where a step leads: to its reads, or to the step that goes on from it; a read from which none goes on, to the next one. */
  function leadsTo(way) {
    const reads = inStep(way).filter(isRead);
    const after = all(seen.article, '.way').find((other) => other.dataset.before === way.id);
    if (!isRead(way) && reads.length > 0) { return reads; }
    if (after) { return inStep(after).filter((other) => other === after || isRead(after)); }
    const next = isRead(way) && reads[reads.indexOf(way) + 1];
    return next ? [next] : [];
  }

  function onward() {
    stage.next.replaceChildren(make('span', { textContent: 'Next' }), ...leadsTo(seen.way).map((other) => {
      const link = make('a', { href: '#' + other.id }), chip = all(seen.article, '.reads a').find((read) => read.hash === link.hash);
      link.append(...(chip || one(other, 'h2')).cloneNode(true).childNodes);
      for (const small of all(link, 'small')) { small.remove(); }
      return link;
    }));
  }

  function fill() {
    const way = seen.way, picture = one(way, '.picture');
    stage.view.replaceChildren(one(picture, '.still').cloneNode(true));
    stage.view.setAttribute('aria-label', picture.getAttribute('aria-label'));
    seen.moving = filmOf(way, seen.article);
    stage.view.append(seen.moving.film);
    for (const sample of all(seen.article, '.key span')) { sample.hidden = !one(stage.view, '.' + sample.dataset.mark); }
    accent(stage.view);
    one(seen.article, '.stage').append(stage);
    lay();
  }

  /* ---- what is seen ---- */

  /* What decides between the reads of a step, as it is said there, to go on behind its number. */
  function decides(ways) {
    const said = ways.map((way) => one(way, '.decides')).find(Boolean);
    return said ? said.textContent.replace(/\.$/, '').replace(/^W/, 'w') : 'the ways on';
  }

  /* The other reads of the step, small, under what is seen. */
  function below() {
    const old = one(seen.article, '.below'), step = inStep(seen.way), reads = step.filter((way) => isRead(way) && way !== seen.way);
    if (old) { old.remove(); }
    if (reads.length === 0) { return; }
    const made = make('section', { className: 'below on' });
    const list = make('ul', {});
    for (const way of reads) {
      const link = make('a', { href: '#' + way.id }), head = make('h3', {}), item = make('li', {});
      head.append(...one(way, 'h2').cloneNode(true).childNodes);
      link.append(head, one(way, '.still').cloneNode(true));
      item.append(link);
      list.append(item);
    }
    made.append(make('h2', { textContent: 'Step ' + seen.way.dataset.step + ': ' + decides(step) }), list);
    seen.article.append(made);
  }

  function mark(elements, chosen, word) {
    for (const element of elements) {
      if (chosen(element)) { element.setAttribute('aria-current', word); } else { element.removeAttribute('aria-current'); }
    }
  }

  function choose(element, time) {
    const article = element.matches('article') ? element : element.closest('article');
    const ways = all(article, '.way'), chosen = element === article ? ways[0] : element, newPlay = article !== seen.article;
    if (newPlay) { seen.parts = []; }
    const way = chosen && seen.whole ? toldBy(chosen) : chosen || null, newWay = way !== seen.way;
    Object.assign(seen, { article, way, time: way ? Math.min(time || 0, length(way)) : 0, begun: time !== null, playing: false, paused: false, ended: false });
    root.classList.add('reading');
    for (const other of all(document, 'article')) { other.classList.toggle('on', other === article); }
    for (const other of ways) { other.classList.toggle('on', other === way); }
    for (const row of all(article, '.reads')) { row.classList.toggle('on', row.dataset.step === way.dataset.step); }
    const fragment = (link) => decodeURIComponent(link.hash.slice(1));
    mark(all(contents, 'li a'), (link) => fragment(link) === article.id, 'page');
    mark(all(article, '.jump a'), (link) => link.dataset.step ? link.dataset.step === way.dataset.step && !(isRead(way) && fragment(link) !== way.id) : fragment(link) === way.id, 'step');
    if (newWay && way) { fill(); below(); }
    show();
    if (newPlay) { one(article, 'h1').focus({ preventScroll: true }); scrollTo(0, 0); }
    if (newWay && way && !newPlay) { told.textContent = one(way, 'h2').textContent; }
    document.title = one(article, 'h1').textContent;
  }

  function leave() {
    const was = seen.article;
    Object.assign(seen, { article: null, way: null, time: 0, begun: false, playing: false, moving: null, whole: false, parts: [] });
    root.classList.remove('reading');
    for (const article of all(document, 'article')) { article.classList.remove('on'); }
    mark(all(contents, 'li a'), () => false, 'page');
    document.title = title;
    if (was) { one(contents, 'h1').focus({ preventScroll: true }); scrollTo(0, 0); }
  }

  /* The marks of that player in a picture. */
  function accent(from) {
    for (const drawn of all(from, '.mine')) { drawn.classList.remove('mine'); }
    if (seen.me) { for (const drawn of all(from, '.p' + seen.me)) { drawn.classList.add('mine'); } }
  }

  function mine(number) {
    seen.me = number;
    for (const press of all(document, '.me button')) { press.setAttribute('aria-pressed', String(Number(press.dataset.me) === number)); }
    accent(document);
    for (const job of all(document, '.job')) { job.classList.toggle('on', Number(job.dataset.me) === number); }
  }

  /* On a wide page, and where there is only one, there is always a play to be seen. */
  const alone = all(document, 'article').length === 1;
  const wide = matchMedia('(min-width: 1100px)');

  /* What is to be looked at is not left out of sight. */
  function insight() {
    const box = stage.view.getBoundingClientRect();
    if (box.height > 0 && (box.top < 0 || box.bottom > innerHeight)) { stage.view.scrollIntoView({ block: 'nearest' }); }
  }

  function go(hash, push) {
    const place = read(hash);
    if (place.me !== null) { mine(place.me); }
    const first = wide.matches || alone ? one(document, 'article') : null;
    const before = seen.way || seen.article, article = (place.element || first || document.body).closest('article');
    seen.whole = place.whole || (seen.whole && push && article === seen.article);
    if (place.element || first) { choose(place.element || first, place.time); } else { leave(); }
    write(push && (seen.way || seen.article) !== before);
    if (push && seen.way) { insight(); }
  }

  /* A browser that is given an address scrolls to the words it names: the picture is over them. */
  function arrive() {
    go(location.hash, false);
    scrollTo(0, 0);
  }

  /* ---- search, dark ---- */

  const plain = (text) => ' ' + text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();

  /* What each link of the list is found by: its name, and every word that stands in its play. Made at the first search. */
  let entries = null;
  function index() {
    return all(contents, 'li a').map((link) => {
      const article = document.getElementById(decodeURIComponent(link.hash.slice(1))), section = link.closest('section'), head = one(section, 'h2');
      const said = all(article, ':scope > header, .way h2, .words, .always, .care bdi, .first, table').map((element) => element.textContent);
      return { item: link.parentElement, section, name: link.textContent.toLowerCase(),
        text: plain([link.textContent, link.dataset.find, head ? head.textContent : '', ...said].join(' ')) };
    });
  }

  /* By a piece of the name, or by how words begin elsewhere; whose name it is stand first. */
  function search() {
    const words = find.value.toLowerCase().split(/\s+/).filter(Boolean), sections = new Map();
    entries = entries || index();
    for (const entry of entries) {
      const named = words.every((word) => entry.name.includes(word));
      const fits = named || words.every((word) => entry.name.includes(word) || entry.text.includes(plain(word)));
      const found = sections.get(entry.section) || { named: [], others: [], any: false };
      sections.set(entry.section, found);
      entry.item.hidden = !fits;
      (named ? found.named : found.others).push(entry.item);
      found.any = found.any || fits;
    }
    const none = one(contents, '.none');
    for (const [section, found] of [...sections].sort(([, a], [, b]) => (b.named.length > 0) - (a.named.length > 0))) {
      section.hidden = !found.any;
      one(section, 'ul').append(...found.named, ...found.others);
      none.before(section);
    }
    none.hidden = [...sections.values()].some((found) => found.any);
  }

  const night = matchMedia('(prefers-color-scheme: dark)');
  const isDark = () => root.dataset.look ? root.dataset.look === 'dark' : night.matches;
  const name = () => { dark.textContent = isDark() ? 'Light' : 'Dark'; };

  /* ---- begin ---- */

  const title = document.title;
  for (const element of all(document, '.bar, .search, .me')) { element.hidden = false; }
  build();
  name();
  one(document, '.home').hidden = alone;
  dark.addEventListener('click', () => { root.dataset.look = isDark() ? 'light' : 'dark'; name(); });
  night.addEventListener('change', name);
  find.addEventListener('input', search);
  document.addEventListener('click', (event) => {
    const press = event.target.closest('.me button');
    const link = event.target.closest('a[href^="#"]');
    if (link && !event.ctrlKey && !event.metaKey && !event.shiftKey) { event.preventDefault(); seen.touched = link; go(link.hash, true); }
    if (press) { mine(Number(press.dataset.me) === seen.me ? 0 : Number(press.dataset.me)); write(false); }
  });
  /* Where words go by under the picture, its edge is seen. */
  addEventListener('scroll', () => {
    const place = stage.parentElement;
    if (place) { place.classList.toggle('over-words', place.getBoundingClientRect().top <= 0); }
  }, { passive: true });
  addEventListener('hashchange', arrive);
  wide.addEventListener('change', arrive);
  arrive();
  addEventListener('load', () => requestAnimationFrame(() => scrollTo(0, 0)));
});
