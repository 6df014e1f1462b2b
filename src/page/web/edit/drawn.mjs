// SPDX-License-Identifier: MIT
// drawn: the picture that a page of the sample opens with, drawn as the page is made: asks the very worker of the page,
// under node. Gives JSON: {module, light, dark}. Usage: node drawn.mjs MODULE.wasm SAMPLE.play NAME
import crypto from 'node:crypto'
import fs from 'node:fs'
import {opening} from './ahead.js'

const [, , module, sample, name] = process.argv
const bytes = fs.readFileSync(module), text = fs.readFileSync(sample, 'utf8')
const waiting = new Map()

globalThis.self = {
  postMessage: ({id, answer, trouble}) => {
    const {good, bad} = waiting.get(id)
    trouble === undefined ? good(answer) : bad(new Error(trouble))
  }
}
await import('./worker.js')

let next = 0
function ask(what, more) {
  const id = next++
  return new Promise((good, bad) => {
    waiting.set(id, {good, bad})
    globalThis.self.onmessage({data: {id, ask: what, ...more}})
  })
}

await ask('start', {module: await WebAssembly.compile(bytes)})
const [light, dark] = [await ask('show', opening({name, text}, false)), await ask('show', opening({name, text}, true))]
if (!light.svg || !dark.svg) {
  throw new Error('the sample has no picture')
}
const digest = crypto.createHash('sha256').update(bytes).digest('hex').slice(0, 16)
process.stdout.write(JSON.stringify({module: digest, light: light.svg, dark: dark.svg}))
