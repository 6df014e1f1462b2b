// SPDX-License-Identifier: MIT
// boot: begins what takes time before the editor is there: the worker, what was written last, and its first picture.
// A browser starts a worker, and shows what it answers, only while nothing else is done in the page: main.js lies in it
// as text, and is run when the picture is there; the text that is written in is shown as it is meanwhile.
import {playLine} from './headings.js'
import {svgOf} from './picture.js'
import {storeOf} from './store.js'
import {isDark, useTheme} from './theme.js'
import {Thread} from './thread.js'

const dataOf = (id) => document.getElementById(id).textContent

useTheme()

const parsed = new Promise((go) => document.addEventListener('DOMContentLoaded', go))
const quick = new Thread(dataOf('worker'), parsed.then(() => dataOf('module')))
const store = storeOf(document, {name: 'lantern.play', text: dataOf('sample')})

// The picture that is asked for first; main.js takes it when it comes to the same question.
function askFirst({name, text, includes}) {
  const asked = {name, text, line: playLine(text, 1) || 1, file: '', shown: 1, label: '', dark: isDark(), checks: true}
  quick.ask('files', {files: includes, another: true})
  return {asked, answer: quick.ask('show', asked)}
}

const guess = store.guess()
const opened = store.open()

globalThis.courtwright = {
  quick,
  store,
  opened,
  first: 0, // ms after opening: the first picture was there
  early: guess ? Promise.resolve(askFirst(guess)) : opened.then(askFirst).catch(() => null), // main.js tells what went wrong
  // A second worker, of the module that the first has compiled.
  another: () => new Thread(dataOf('worker'), quick.ready.then(({compiled}) => compiled))
}

const LATE = 1000 // ms: if there is no picture by then, the page has to say why (ours)

async function showFirst() {
  const {asked, answer} = await globalThis.courtwright.early
  document.getElementById('plain').textContent = asked.text
  const {svg} = await answer
  if (svg) {
    document.getElementById('floor').replaceChildren(svgOf(svg))
    globalThis.courtwright.first = performance.now()
    await new Promise(requestAnimationFrame)
  }
}

function runMain() {
  const script = document.createElement('script')
  script.textContent = dataOf('main')
  document.body.append(script)
}

parsed.then(() => Promise.race([showFirst().catch(() => null), new Promise((go) => setTimeout(go, LATE))])).then(runMain)
