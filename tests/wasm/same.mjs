// SPDX-License-Identifier: MIT
// The module gives the same bytes as the native program: every live diagram and the positions of every book
// named. Usage: node same.mjs MODULE PROGRAM BOOK...  Prints TAP.
import {execFileSync} from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import {openCore} from '../../src/page/web/edit/core.js'
import {check, done} from './tap.mjs'

const [modulePath, program, ...books] = process.argv.slice(2)
const module = new WebAssembly.Module(fs.readFileSync(modulePath))

const imports = WebAssembly.Module.imports(module).map((one) => `${one.module}.${one.name}`).sort().join(' ')
check(imports === 'page.guard page.unwind', 'the module asks the world for two functions only', imports)
const size = fs.statSync(modulePath).size
console.log(`# the module holds ${size} bytes`)

const core = await openCore(module)

// What the native program draws, in the order of plays and diagrams.
function native(book) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'same-'))
  try {
    execFileSync(program, ['draw', book, '--text', 'live', '-o', path.join(folder, '{n}.svg')], {stdio: 'pipe'})
    const names = fs.readdirSync(folder).sort((a, b) => parseInt(a, 10) - parseInt(b, 10))
    return names.map((name) => fs.readFileSync(path.join(folder, name), 'utf8'))
  } finally {
    fs.rmSync(folder, {recursive: true})
  }
}

function inModule(book) {
  const folder = path.dirname(book)
  const beside = fs.readdirSync(folder).filter((name) => name.endsWith('.play'))
  core.files(Object.fromEntries(beside.map((name) => [name, fs.readFileSync(path.join(folder, name), 'utf8')])))
  const told = core.load(path.basename(book), fs.readFileSync(book, 'utf8'))
  const pictures = told.plays.flatMap((play, index) =>
    play.diagrams.map((_, diagram) => core.draw(index, diagram, {print: true}).svg))
  return {told, pictures}
}

for (const book of books) {
  let drawn
  try {
    drawn = native(book)
  } catch (thrown) {
    check(false, `${path.basename(book)} is drawn natively`, thrown.stderr)
    continue
  }
  const {told, pictures} = inModule(book)
  const differ = drawn.findIndex((svg, i) => svg !== pictures[i])
  check(drawn.length > 0 && drawn.length === pictures.length && differ < 0,
    `${path.basename(book)}: ${drawn.length} live diagrams, the same bytes`,
    `${pictures.length} in the module; the first that differs: ${differ}`)
  const whole = told.plays[0].name
  const places = JSON.parse(execFileSync(program, ['positions', book, '--play', whole, '-o', '-'], {encoding: 'utf8'}))
  check(JSON.stringify(core.positions(0, 30)) === JSON.stringify(places),
    `${path.basename(book)}: the positions of ${whole} are the same`)
}

// What the page leans on: errors are said, and a text that is none, or too large, ends in words and not in a trap.
const wrong = core.load('a.play', 'play "A"\n  start five-out\n  step\n    1 pases to 2\n')
check(wrong.errors === 1 && wrong.plays[0].broken && core.draw(0, 0).status === 'broken', 'a wrong word is an error, its play broken',
  JSON.stringify(wrong.said))
check(core.load('a.play', 'play\0').said[0].id === 'file.binary', 'a text with a NUL is refused')
check(core.load('a.play', 'x'.repeat((8 << 20) + 1)).said[0].id === 'file.too-large', 'a text of more than 8 MiB is refused')

// Blocks of the module's own heap: each keeps what was written into it, and what was given back is taken again.
{
  const held = []
  let seed = 7, spoiled = 0, astray = 0, wide = 0
  const below = (most) => (seed = (seed * 48271) % 2147483647) % most
  for (let turn = 0; turn < 6000; turn++) {
    if (held.length > 60 || (held.length > 0 && below(5) < 2)) {
      const [{at, size, mark}] = held.splice(below(held.length), 1)
      spoiled += new Uint8Array(core.raw.memory.buffer, at, size).some((byte) => byte !== mark)
      core.raw.give(at)
    } else {
      const size = 1 + below(below(4) ? 500 : 90000), at = core.raw.take(size), mark = turn % 251
      astray += at % 16 !== 0
      new Uint8Array(core.raw.memory.buffer, at, size).fill(mark)
      held.push({at, size, mark})
    }
    wide = turn === 3000 ? core.raw.memory.buffer.byteLength : wide
  }
  held.forEach(({at}) => core.raw.give(at))
  check(spoiled === 0 && astray === 0, 'blocks do not lie on each other', `${spoiled} spoiled, ${astray} askew`)
  check(core.raw.memory.buffer.byteLength - wide < 1 << 20, 'and what is given back is taken again', core.raw.memory.buffer.byteLength - wide)
}

// Without memory it unwinds through the page's two functions to one thing to say, and goes on when there is some.
const blocks = []
for (let size = 1 << 24; size >= 1 << 12; size >>= 1) {
  for (let block; (block = core.raw.take(size));) {
    blocks.push(block)
  }
}
core.raw.give(blocks.pop()) // for the handle itself and the page's few bytes
const starved = core.load('a.play', 'play "A"\n  start five-out\n  step\n    1 passes to 2\n')
check(starved.said.length === 1 && starved.said[0].id === 'file.memory', 'memory that runs out is one thing to say', JSON.stringify(starved.said))
blocks.forEach((block) => core.raw.give(block))
const again = core.load('a.play', 'play "A"\n  start five-out\n  step\n    1 passes to 2\n')
check(again.errors === 0 && core.draw(0, 0).status === 'ok', 'and the next text is drawn', JSON.stringify(again.said))

done()
