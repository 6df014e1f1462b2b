// SPDX-License-Identifier: MIT
// boot: begins what takes time before the editor is there: the worker, what was written last, and its first picture.
// The module follows it in the page; a script behind it says that it is there (lend).
import {playLine} from './headings.js'
import {storeOf} from './store.js'
import {isDark, useTheme} from './theme.js'
import {Thread} from './thread.js'

const dataOf = (id) => document.getElementById(id).textContent

useTheme()

let lend
const module = new Promise((go) => {
  lend = () => go(dataOf('module'))
})
const quick = new Thread(dataOf('worker'), module)
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
  lend,
  opened,
  early: guess ? Promise.resolve(askFirst(guess)) : opened.then(askFirst).catch(() => null), // main.js tells what went wrong
  // A second worker, of the module that the first has compiled.
  another: () => new Thread(dataOf('worker'), quick.ready.then(({compiled}) => compiled))
}
