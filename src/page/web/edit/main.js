// SPDX-License-Identifier: MIT
// main: the page to write in. The text goes to a worker at every key, which runs the play that is written in and draws
// it; what the whole book has to say follows from a second worker when the keys rest. Nothing leaves the tab but to
// the program that serves it, where one does.
import {opening} from './ahead.js'
import {openEditor} from './editor.js'
import {button, element} from './elements.js'
import {fixIn, listed, marksOf, tell} from './findings.js'
import {handOut} from './hand_out.js'
import {playLine} from './headings.js'
import {Kept, dayOf} from './kept.js'
import {svgOf} from './picture.js'
import {Paper} from './print.js'
import {isDark, onSystemTheme, turnTheme} from './theme.js'
import {Watch} from './watch.js'

const REST = 350 // ms without a key before the whole book is gone through (ours)
const HOLD = 900 // ms before a step is run a hundred times (ours)

const at = (id) => document.getElementById(id)
const {quick, another, store, opened, ahead} = globalThis.courtwright // see boot.js
let {early} = globalThis.courtwright
let slow = null // begun once the first picture is there

const state = {
  name: store.name,
  told: null, // of the quick worker: the play that is shown, run
  whole: null, // of the slow one
  file: '', // the include that the play shown is in; empty: the text itself
  play: -1,
  label: '', // the step that was asked for by its button; empty: the cursor's
  line: 1, // the play of this line is shown
  text: '',
  seen: null // what the picture is of: {told, play, diagram, asked}; of an earlier text while there is an error in it
}
// For whoever measures: how long the worker took for each picture, when the first was there (both in ms), the text,
// and that of the picture.
const times = []
const measured = Object.assign(globalThis.courtwright, {times, text: () => editor.text(), drawn: () => state.text})

// ---- the theme ----

function tellTheme() {
  at('theme').textContent = isDark() ? 'Light' : 'Dark'
}

tellTheme()
onSystemTheme(() => {
  tellTheme()
  show()
})
at('theme').addEventListener('click', () => {
  turnTheme()
  tellTheme()
  show()
})

// ---- saying something ----

function notice(text, ...actions) {
  const bar = at('notice')
  bar.hidden = !text
  bar.replaceChildren(text || '', ...actions.map(([label, act]) => button(label, () => {
    notice('')
    act()
  })))
}

// ---- the picture ----

const watch = new Watch({floor: at('floor'), panel: at('panel'), play: at('play'), slow: at('slow'), line: at('line'), strip: at('strip'), time: at('time')})
const shownPlay = () => (state.told && state.play >= 0 ? state.told.plays[state.play] : null)
const seenPlay = () => (state.seen ? state.seen.told.plays[state.seen.play] : null)
const seenDiagram = () => (state.seen ? seenPlay().diagrams[state.seen.diagram] : null)
const isOld = () => Boolean(state.seen && state.seen.told !== state.told)

function tellSteps() {
  const play = seenPlay()
  const buttons = (play ? play.diagrams : []).map((diagram, index) => {
    const step = button(diagram.label, () => choose(diagram.label))
    step.title = diagram.title
    step.setAttribute('aria-label', diagram.title ? `${diagram.label}: ${diagram.title}` : `Step ${diagram.label}`)
    if (index === state.seen.diagram) {
      step.setAttribute('aria-current', 'true')
    }
    return step
  })
  const had = document.activeElement && at('steps').contains(document.activeElement) && state.seen ? state.seen.diagram : -1
  at('steps').replaceChildren(...buttons)
  if (had >= 0 && buttons[had]) {
    buttons[had].focus()
  }
  at('watch').disabled = !seenDiagram()
}

function tellPlays() {
  const plays = state.told.plays, select = at('plays')
  at('pick').hidden = plays.length < 2
  const names = plays.map((play) => play.name).join('\n')
  if (select.dataset.names !== names) {
    select.dataset.names = names
    select.replaceChildren(...plays.map((play, index) => new Option(play.name, String(index))))
  }
  select.value = String(state.play)
}

function saidNow() {
  const said = state.told.said, whole = state.whole
  if (!whole || whole.text === state.text) {
    return whole ? whole.told.said : said
  }
  // of the plays that wait, what was last said
  const name = shownPlay() ? shownPlay().name : ''
  return [...said, ...whole.told.said.filter((one) => one.finding && one.play !== name)]
}

function count(said) {
  const all = said.filter((one) => !one.accepted).length
  return all === 0 ? 'nothing to check' : `${all} to check`
}

// Where the text is not whole: the line that its picture waits for.
function brokenAt() {
  const play = shownPlay(), errors = state.told.said.filter((one) => one.severity === 'error' && one.line > 0)
  const file = play ? play.file : state.name, inFile = errors.filter((one) => one.file === file).sort((a, b) => a.line - b.line)
  const first = inFile.find((one) => play && one.line >= play.line) || inFile[0] || errors[0]
  return !first ? '' : ` in line ${first.line}${first.file === state.name ? '' : ` of ${first.file}`}`
}

function tellFindings() {
  const said = saidNow(), play = seenPlay(), label = seenDiagram() ? seenDiagram().label : ''
  at('count').textContent = count(said)
  editor.mark(marksOf(editor, said, shownPlay(), label, state.name))
  const old = isOld() ? state.seen.told.said.filter((one) => one.finding && one.letter > 0 && one.play === play.name) : []
  tell(at('found'), listed(said, shownPlay(), label, old), {
    goTo: (one) => editor.goTo(one.line),
    fix: (one) => fixIn(editor, one, state.name),
    apply: (fix) => {
      editor.change(fix.from, fix.to, fix.insert)
      editor.view.focus()
    },
    show: choose
  })
}

function tellHeld() {
  const diagram = seenDiagram()
  if (!diagram || isOld()) {
    at('held').textContent = diagram ? `${diagram.label}: as it was before the error${brokenAt()}` : ''
    return
  }
  const held = state.held && state.held.text === state.text && state.held.play === state.play
    ? state.held.list.find((one) => one.diagram === state.seen.diagram) : null
  const runs = held && held.runs ? `; timing held in ${held.works} of ${held.runs} computer runs` : ''
  at('held').textContent = `${diagram.label} takes ${(diagram.lasts / 1000).toFixed(1)} s${runs}`
}

function tellPicture(svg) {
  const play = shownPlay()
  if (!svg) {
    const why = !play ? 'A play begins with a line such as: play "Lantern"'
      : play.broken ? `${play.name} is drawn when what is marked in it is mended.` : `${play.name} has no step yet.`
    at('floor').replaceChildren(element('p', '', why))
    return
  }
  at('floor').replaceChildren(svgOf(svg))
}

// The first picture was asked for before all this was here.
async function askedFirst(asked) {
  const first = await early
  early = null
  return first && JSON.stringify(first.asked) === JSON.stringify(asked) ? first.answer : null
}

async function show() {
  const text = editor.text()
  at('printed').textContent = text // for the browser's own printing: the editor holds only what is seen of it
  const asked = {name: state.name, text, line: state.line, file: state.file, shown: state.shown, label: state.label, dark: isDark(), checks: true}
  let answer
  try {
    answer = await askedFirst(asked) || await quick.latest('show', asked)
  } catch (thrown) {
    notice(`The play could not be run: ${thrown.message}. Your text is safe; change it and it is tried again.`)
    return
  }
  if (!answer) {
    return // a newer question is on its way
  }
  const {told, before} = answer, seen = answer.svg ? {...answer, asked} : before
  Object.assign(state, {told, play: answer.play, text, seen})
  times.push(answer.took)
  const play = shownPlay()
  if (play && play.file !== state.name) {
    aimAt(play)
  }
  at('name').textContent = state.file ? `${state.name} (shown: ${state.file})` : state.name
  at('title').textContent = play ? play.name : answer.told.title || 'courtwright'
  document.title = `${at('title').textContent} - courtwright`
  tellPlays()
  tellSteps()
  if (watch.open && state.seen) {
    if (!isOld() || whatIsSeen() !== watched) {
      await startWatch(watch.time, watch.moving)
    }
  } else {
    stopWatch()
    tellPicture(state.seen && state.seen.svg)
  }
  at('floor').classList.toggle('old', isOld())
  tellFindings()
  tellHeld()
  measured.first = measured.first || performance.now()
  document.documentElement.dataset.shown = String(times.length) // for whoever waits for it
  later()
}

function choose(label) {
  state.label = label
  if (watch.open) {
    watch.stop()
    watch.time = 0
  }
  show()
}

// ---- when the keys rest ----

const timers = {}
function after(name, wait, work) {
  clearTimeout(timers[name])
  timers[name] = setTimeout(work, wait)
}

function later() {
  slow = slow || another()
  after('whole', REST, goThrough)
  after('held', HOLD, tryTiming)
}

async function goThrough() {
  const text = editor.text()
  if (state.whole && state.whole.text === text) {
    return
  }
  try {
    await slow.ask('files', {files: store.includes || {}})
    const told = await slow.latest('all', {name: state.name, text})
    if (told) {
      state.whole = {text, told}
      tellFindings()
    }
    await keepAhead(text)
  } catch (thrown) {
    notice(`The book could not be gone through: ${thrown.message}.`)
  }
}

// The picture with which the next page of this text opens.
async function keepAhead(text) {
  const {includes} = store, asked = opening({name: state.name, text}, isDark())
  const answer = ahead.misses(asked, includes) ? await slow.latest('show', asked) : null
  if (answer && answer.svg) {
    ahead.keep(asked, includes, answer.svg)
  }
}

async function tryTiming() {
  const text = editor.text(), play = state.play
  const known = state.held && state.held.text === text && state.held.play === play
  if (!seenDiagram() || isOld() || known) {
    return
  }
  try {
    const list = await slow.latest('tolerance', {name: state.name, text, line: state.line, file: state.file, play})
    if (list) {
      state.held = {text, play, list}
      tellHeld()
    }
  } catch {
    // the line says only how long it takes then
  }
}

// ---- moving ----

let watched = '' // what is moving

const whatIsSeen = () => [state.seen.asked.name, state.seen.play, state.seen.diagram, isDark(), state.seen.asked.text].join('\n')

async function startWatch(time = 0, moves = true) {
  const {asked: {name, text, line, file}, play, diagram} = state.seen
  watched = whatIsSeen()
  const answer = await quick.ask('watch', {name, text, line, file, play, diagram, dark: isDark()})
  if (!answer.svg || !answer.segment) {
    return
  }
  watch.show(answer, time, moves)
  at('watch').setAttribute('aria-pressed', 'true')
}

function stopWatch() {
  if (watch.open) {
    watch.hide()
  }
  at('watch').setAttribute('aria-pressed', 'false')
}

at('watch').addEventListener('click', () => {
  if (watch.open) {
    stopWatch()
    show()
  } else if (state.seen) {
    startWatch()
  }
})

at('plays').addEventListener('change', () => {
  const play = state.told.plays[Number(at('plays').value)]
  state.label = ''
  aimAt(play)
  if (play.file === state.name) {
    editor.goTo(play.line)
  }
  show()
})

// ---- on paper ----

const paper = new Paper(at('paper'), {
  store,
  text: () => editor.text(),
  brokenAt,
  book: () => ({told: state.told, play: state.play}),
  make: (wanted) => quick.ask('paper', {name: state.name, text: editor.text(), ...wanted}),
  closed: () => at('page').focus()
})
at('page').addEventListener('click', () => {
  if (state.told) {
    watch.stop()
    paper.open()
  }
})
addEventListener('keydown', (event) => {
  const printing = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'p'
  if (printing && at('paper').hidden && state.told) {
    event.preventDefault()
    paper.open()
  }
})

// ---- the text, kept ----

const kept = new Kept({
  store,
  notice,
  text: () => editor.text(),
  become: (text) => editor.become(text),
  tell: (text) => { at('saved').textContent = text },
  files: useFiles
})

// What may be included, and so may change what is seen.
function useFiles(includes) {
  const same = JSON.stringify(includes) === JSON.stringify(store.includes)
  store.includes = includes
  if (!same) {
    state.whole = state.held = null
    quick.ask('files', {files: includes})
    show()
  }
}

function aimAt(play) {
  state.file = play.file === state.name ? '' : play.file
  state.line = play.line
}

// The play that a line of the text is in; a text of includes alone leaves the one that is shown.
function aimAtLine(text, line) {
  const heading = playLine(text, line)
  if (heading || !state.file) {
    state.file = ''
    state.line = heading || 1
  }
}

function changed(text) {
  aimAtLine(text, editor.line())
  state.shown = editor.line()
  state.label = ''
  kept.touched()
  colorNow(text)
  show()
}

async function colorNow(text) {
  await classes
  const tokens = await quick.ask('tokens', {text})
  editor.color(tokens, text)
}

function moved(line) {
  state.shown = line
  state.label = ''
  aimAtLine(editor.text(), line)
  if (state.told && state.told.plays.length > 0) {
    after('moved', 60, show)
  }
}

function load(name, text, includes, id, begun = false) {
  state.name = name
  state.file = ''
  store.turnTo(name, includes, id)
  tellDrafts()
  state.whole = state.held = null
  at('name').textContent = name
  if (!begun) {
    quick.ask('files', {files: includes, another: true})
  }
  if (editor.text() === text) {
    changed(text) // the editor has nothing to tell
  } else {
    editor.replace(text)
  }
}

// Other texts that were written in this browser.
async function tellDrafts() {
  const drafts = await store.drafts(), select = at('drafts')
  select.hidden = drafts.length === 0
  select.replaceChildren(new Option('Drafts', ''), ...drafts.map((draft) => new Option(`${draft.name}, ${dayOf(draft.at)}`, draft.id)))
}

at('drafts').addEventListener('change', async () => {
  const chosen = (await store.drafts()).find((draft) => draft.id === at('drafts').value)
  if (chosen) {
    await store.save(editor.text())
    load(chosen.name, chosen.text, chosen.includes, chosen.id)
  }
})

at('open').hidden = store.kind === 'server' // its file is open
at('open').addEventListener('click', () => at('file').click())
at('file').addEventListener('change', () => openFiles([...at('file').files]))
document.addEventListener('dragover', (event) => event.preventDefault())
document.addEventListener('drop', (event) => {
  event.preventDefault()
  openFiles([...event.dataTransfer.files])
})

const INCLUDE = /^[ \t]*include[ \t]+"([^"]+)"[ \t]*$/gm

// Several files become one book: each stands where it is included.
function joined(texts, name) {
  return texts[name].replace(INCLUDE, (line, path) => {
    const found = path.split('/').pop()
    return texts[found] !== undefined && found !== name ? texts[found].replace(/\n$/, '') : line
  })
}

async function openFiles(files) {
  if (files.length === 0) {
    return
  }
  if (store.kind === 'server') {
    notice(`This page is for ${state.name}: courtwright open ${files[0].name} opens another file.`)
    return
  }
  const texts = {}
  for (const file of files) {
    texts[file.name] = (await file.text()).replace(/\r\n?/g, '\n')
  }
  const names = Object.keys(texts)
  const main = names.find((name) => texts[name].search(INCLUDE) >= 0) || names[0]
  await store.save(editor.text()) // it stays among the drafts
  load(main, joined(texts, main), {})
}

at('download').addEventListener('click', () => {
  handOut(new Blob([editor.text()], {type: 'text/plain'}), state.name)
})

at('tidy').addEventListener('click', async () => {
  const text = editor.text()
  const tidied = await quick.ask('tidy', {name: state.name, text})
  if (tidied && tidied !== text && text === editor.text()) {
    editor.become(tidied)
  }
})

addEventListener('pagehide', () => kept.leave())
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') {
    kept.leave()
  }
})

// ---- beginning ----

const editor = openEditor({
  parent: at('source'),
  text: '',
  changed,
  moved,
  complete: (text, place) => quick.ask('complete', {name: state.name, text, at: place}),
  hover: (text, place) => quick.ask('hover', {name: state.name, text, at: place})
})

const classes = quick.ready.then((ready) => editor.useClasses(ready.classes))

async function begin() {
  try {
    const {name, text, includes, id} = await opened, first = await early
    load(name, text, includes, id, first && first.asked.name === name && first.asked.text === text)
    kept.begin(await opened)
    await classes
  } catch (thrown) {
    notice(`This page cannot begin: ${thrown.message}`)
  }
}

begin()
