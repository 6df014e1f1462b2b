// SPDX-License-Identifier: MIT
// boot: begins what takes time before the editor is there: the worker, what was written last, and its first picture,
// which may be there already (ahead.js). A browser starts a worker, and shows what it answers, only while nothing else
// is done in the page: main.js lies in it as text, and is run when the picture is there; the text that is written in is
// shown as it is meanwhile.
import {Ahead, opening} from './ahead.js'
import {svgOf} from './picture.js'
import {storeOf} from './store.js'
import {isDark, useTheme} from './theme.js'
import {Thread} from './thread.js'

const dataOf = (id) => document.getElementById(id).textContent

useTheme()

const parsed = new Promise((go) => document.addEventListener('DOMContentLoaded', go))
// The floor is there long before the module behind it, which is most of the file.
const floor = new Promise((go) => {
  const look = () => {
    if (document.getElementById('paper')) {
      seen.disconnect()
      go(document.getElementById('floor'))
    }
  }
  const seen = new MutationObserver(look)
  seen.observe(document, {childList: true, subtree: true})
  look()
})
const quick = new Thread(dataOf('worker'), parsed.then(() => dataOf('module')))
const sample = {name: 'lantern.play', text: dataOf('sample')}
const store = storeOf(document, sample)
const ahead = new Ahead(JSON.parse(dataOf('drawn')), sample)

// The picture that is asked for first; main.js takes it when it comes to the same question.
function askFirst({name, text, includes}) {
  const asked = opening({name, text}, isDark())
  quick.ask('files', {files: includes, another: true})
  return {asked, drawn: ahead.find(asked, includes), answer: quick.ask('show', asked)}
}

const guess = store.guess()
const opened = store.open()

globalThis.courtwright = {
  quick,
  store,
  opened,
  ahead,
  first: 0, // ms after opening: the first picture was there
  wasDrawn: false, // before the module was
  ran: 0, // and the first that this page's module has drawn
  early: guess ? Promise.resolve(askFirst(guess)) : opened.then(askFirst).catch(() => null), // main.js tells what went wrong
  // A second worker, of the module that the first has compiled.
  another: () => new Thread(dataOf('worker'), quick.ready.then(({compiled}) => compiled))
}

const LATE = 1000 // ms: if there is no picture by then, the page has to say why (ours)

async function showFirst() {
  const {asked, drawn, answer} = await globalThis.courtwright.early
  const place = await floor
  document.getElementById('plain').textContent = asked.text
  const ran = answer.then(({svg}) => {
    globalThis.courtwright.ran = performance.now()
    return svg
  })
  ran.catch(() => null) // main.js tells what went wrong
  const svg = drawn || await ran
  if (svg) {
    place.replaceChildren(svgOf(svg))
    Object.assign(globalThis.courtwright, {first: performance.now(), wasDrawn: Boolean(drawn)})
    await new Promise(requestAnimationFrame)
  }
}

function runMain() {
  const script = document.createElement('script')
  script.textContent = dataOf('main')
  document.body.append(script)
}

Promise.all([parsed, Promise.race([showFirst().catch(() => null), new Promise((go) => setTimeout(go, LATE))])]).then(runMain)
