// SPDX-License-Identifier: MIT
// worker: the core in a thread of its own. Takes {id, ask, ...}, answers {id, answer} or {id, trouble}. The first
// message brings the module. When the module traps, a fresh one is started: texts come with every question.
import {Around} from './again.js'
import {Before} from './before.js'
import {openCore} from './core.js'

let compiled, core
const encoder = new TextEncoder()

// Bytes of a text to places in it as JavaScript counts them, and back.
function placesOf(text) {
  const plain = !/[^\x00-\x7f]/.test(text)
  if (plain) {
    return {toText: (byte) => byte, toBytes: (place) => place}
  }
  const map = new Uint32Array(encoder.encode(text).length + 1)
  let byte = 0
  for (let place = 0; place < text.length;) {
    const code = text.codePointAt(place), wide = code > 0xffff ? 2 : 1
    const length = code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
    map.fill(place, byte, byte + length)
    byte += length
    place += wide
  }
  map[byte] = text.length
  return {toText: (at) => map[at], toBytes: (place) => encoder.encode(text.slice(0, place)).length}
}

function placed(list, places) {
  return list.map((one) => ({...one, from: places.toText(one.begin), to: places.toText(one.end)}))
}

// Of the play's diagrams the one that is asked for by its label, else the one the line is in.
function diagramAt(play, label, line) {
  const named = play.diagrams.findIndex((diagram) => diagram.label === label)
  if (named >= 0) {
    return named
  }
  let best = 0
  play.diagrams.forEach((diagram, index) => {
    const before = play.diagrams[best]
    const opens = diagram.step_line <= line && (diagram.step > before.step || diagram.line <= line)
    best = opens ? index : best
  })
  return best
}

let loaded = null // what the module holds: {name, text, line, file}
let around = null // what a key in the play that was run does not change

// A play of the text itself: of its neighbors, once they were read, only what can be another.
function loadPlay(name, text, line) {
  const told = around && around.load({name, text, line}, (short, at) => core.load(name, short, at))
  if (told) {
    return told
  }
  const whole = core.load(name, text, line)
  around = Around.of({name, text, told: whole})
  return whole
}

function load(name, text, line, file = '') {
  const told = line > 0 && (!file || file === name) ? loadPlay(name, text, line) : core.load(name, text, line, file)
  loaded = {name, text, line, file, told}
  return told
}

// The same text again, with that play run; gives what was told.
function loadedAt({name, text, line, file = ''}) {
  const same = loaded && loaded.name === name && loaded.text === text && loaded.line === line && loaded.file === file
  return same ? loaded.told : load(name, text, line, file)
}

const before = new Before()
let stands = null // what was drawn from an earlier text, and by which question: {same, answer}

const runIn = (told) => told.plays.findIndex((play) => !play.waiting)

function shownNow({name, text, line, file, label, dark, checks, shown}) {
  let told = loadedAt({name, text, line, file})
  if (runIn(told) < 0 && told.plays.length > 0) {
    told = load(name, text, told.plays[0].line, told.plays[0].file)
  }
  const index = runIn(told), play = told.plays[index]
  if (!play || play.broken || play.diagrams.length === 0) {
    return {told, play: index, diagram: -1, svg: ''}
  }
  const diagram = diagramAt(play, label, play.file === name ? shown || line : 0)
  const picture = core.draw(index, diagram, {dark, checks, fluid: true}, 432)
  return {told, play: index, diagram, svg: picture.svg}
}

// The same picture is not made again at every key.
function shownBefore(asked, {told, play}) {
  const known = before.of(told, play, asked)
  if (!known) {
    return null
  }
  const question = before.question(known, asked), same = JSON.stringify(question)
  if (!stands || stands.same !== same) {
    const answer = shownNow(question)
    stands = {same, answer: answer.svg ? {...answer, asked: question} : null}
  }
  return stands.answer
}

const answers = {
  // The play of one line, run, and its picture; where there is none the first of the book, from an include. While it
  // cannot be drawn, `before`: the answer to the last question of it that could.
  show(asked) {
    const began = performance.now()
    const answer = shownNow(asked)
    if (answer.svg) {
      stands = null
      before.keep(asked, answer.told.plays[answer.play], answer.play, answer.told)
    } else {
      answer.before = shownBefore(asked, answer)
    }
    return {...answer, took: performance.now() - began}
  },

  // Everything, for what is said of the whole book.
  all: ({name, text}) => load(name, text, -1),

  tokens({text}) {
    const tokens = core.tokens(text), places = placesOf(text)
    for (let i = 0; i < tokens.length; i += 3) {
      tokens[i] = places.toText(tokens[i])
      tokens[i + 1] = places.toText(tokens[i + 1])
    }
    return tokens
  },

  complete({name, text, at}) {
    const places = placesOf(text)
    return placed(core.complete(name, text, places.toBytes(at)), places)
  },

  hover({name, text, at}) {
    const places = placesOf(text)
    return placed(core.hover(name, text, places.toBytes(at)), places)
  },

  tidy({name, text}) {
    load(name, text, 0)
    return core.tidy()
  },

  // One diagram as it moves, and its moments.
  watch({name, text, line, file, play, diagram, dark}) {
    const told = loadedAt({name, text, line, file})
    const moving = core.animate(play, diagram, {dark, fluid: true}, 'watch')
    const places = core.positions(play, 1), {lasts, tasks} = told.plays[play].diagrams[diagram]
    return {svg: moving.svg, segment: places ? places.segments[diagram] : null, lasts: lasts / 1000, tasks}
  },

  // A sheet as HTML; of the coach's also the moments of its steps, play by play. A play with an error is printed as it
  // was last drawn, when it was; `broken`: the names of those that have one.
  paper({name, text, sheet, play, reader, names, a4}) {
    let told = loadedAt({name, text, line: -1})
    const broken = told.plays.filter((one, index) => one.broken && (play < 0 || play === index)).map((one) => one.name)
    const drawn = play >= 0 && broken.length > 0 ? before.of(told, play, {name, text}) : null
    const known = drawn && drawn.play.name === broken[0] ? drawn : null // not what stood in its place
    if (known) {
      told = loadedAt({...known.asked, line: -1})
    }
    const index = known ? known.index : play
    const made = core.paper(sheet, index, reader, {names, a4})
    const plays = index < 0 ? told.plays.map((_, at) => at).filter((at) => !told.plays[at].broken) : [index]
    const segments = sheet === 'coach' ? plays.map((at) => core.positions(at, 1)?.segments || []) : []
    return {...made, segments, broken}
  },

  tolerance({name, text, line, file, play}) {
    loadedAt({name, text, line, file})
    return core.tolerance(play)
  },

  // another: the text is another one from now on
  files({files, another}) {
    core.files(files)
    loaded = stands = around = null
    if (another) {
      before.forget()
    }
    return true
  }
}

function bytesOf(base64) {
  if (Uint8Array.fromBase64) {
    return Uint8Array.fromBase64(base64)
  }
  const text = atob(base64), bytes = new Uint8Array(text.length)
  for (let i = 0; i < text.length; i++) {
    bytes[i] = text.charCodeAt(i)
  }
  return bytes
}

// Compiled while it is unpacked.
function compile(base64) {
  const unpacked = new Blob([bytesOf(base64)]).stream().pipeThrough(new DecompressionStream('gzip'))
  return WebAssembly.compileStreaming(new Response(unpacked, {headers: {'Content-Type': 'application/wasm'}}))
}

// module: packed, as text; compiled by another worker; or the one that this one has.
async function start(module = compiled) {
  compiled = typeof module === 'string' ? await compile(module) : module
  core = await openCore(compiled)
  loaded = null
  return {classes: core.classes, compiled}
}

let files = {}

async function answer(message) {
  if (message.ask === 'start') {
    return start(message.module)
  }
  files = message.ask === 'files' ? message.files : files
  try {
    return answers[message.ask](message)
  } catch (thrown) {
    await start()
    core.files(files)
    throw thrown
  }
}

let line = Promise.resolve()
self.onmessage = ({data}) => {
  line = line.then(async () => {
    try {
      self.postMessage({id: data.id, answer: await answer(data)})
    } catch (thrown) {
      self.postMessage({id: data.id, trouble: String(thrown && thrown.message || thrown)})
    }
  })
}
