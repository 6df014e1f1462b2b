// SPDX-License-Identifier: MIT
// A key in one play of a book: what the page tells of it without reading the other plays again is what the whole text tells,
// and draws the same. Many edits of every kind, in books that name their plays in each other. Usage: node again.mjs MODULE BOOK... Prints TAP.
import fs from 'node:fs'
import path from 'node:path'
import {Around} from '../../src/page/web/edit/again.js'
import {openCore} from '../../src/page/web/edit/core.js'
import {check, done} from './tap.mjs'

const [modulePath, ...books] = process.argv.slice(2)
const module = new WebAssembly.Module(fs.readFileSync(modulePath))
const whole = await openCore(module), quick = await openCore(module)
const EDITS = Number(process.env.EDITS || 40) // of each book
let seed = 20261126
const below = (most) => (seed = (seed * 48271) % 2147483647) % Math.max(1, most)
const pick = (list) => list[below(list.length)]

// As the page opens several files.
function joined(book) {
  const folder = path.dirname(book)
  return fs.readFileSync(book, 'utf8').replace(/^[ \t]*include[ \t]+"([^"]+)"[ \t]*$/gm, (line, name) => fs.readFileSync(path.join(folder, name), 'utf8').replace(/\n$/, ''))
}

const tangled = (text) => `${text}
team "Second"
  1 "Ada Quill"
  lineup "Small" 1 "Ada Quill"

action "hand and go" for giver, taker
  giver hands off to taker
  giver cuts to the rim

play "Spillway"
  lineup "Small"
  limit space.close 9 ft
  start five-out
  ball 1
  defense zone 2-3
  step
    run "hand and go" with 1 as giver, 2 as taker
  step
    4 and 5 screen for 3

play "Spillway"
  start five-out
  ball 1
  1 passes to 2, 3 cuts

play "Weir"
  start five-out
  ball 1
  same as "Spillway" step 2
  1 pases to 2

charted 2026-11-01 practice
  "Weir" chart "paint" 3 of 5
  "Lantern" read "Curl" 2 of 3

practice "Friday"
  10 min play "Weir"
`

const SAID = ['1 passes to 2', '3 cuts to the rim', 'read x3 trails', '  2 dribbles to the left wing', 'step "Two"', '4 screens down for 3', 'point 3 "Wait"',
  'play "New one"', 'accept space.close "ours"', '# a remark', 'defense man', '', 'run "hand and go" with 1 as giver, 2 as taker', 'practice "Early"', 'chapter "Next"',
  'the second step: swing it', 'units metres', 'level u12', 'limit space.close 3 ft', 'mistake "stands"', 'if x2 helps, 1 passes to 3', 'include "b.play"', 'frame 3']

// What somebody types, mostly in the play that is looked at.
function edited(text, line) {
  const lines = text.split('\n')
  const at = Math.min(lines.length - 1, below(8) ? line - 1 + below(24) : below(lines.length))
  const now = lines[at], place = below(now.length + 1)
  const kinds = [
    () => { lines[at] = now.slice(0, place) + pick('abcx123 ,."#'.split('')) + now.slice(place) },
    () => { lines[at] = now.slice(0, place) + now.slice(place + 1 + below(4)) },
    () => { lines.splice(at + 1, 0, '    ' + pick(SAID)) },
    () => { lines.splice(at + 1, 0, pick(SAID)) },
    () => { lines.splice(at, 1) },
    () => { lines[at] = now.slice(0, place) },
    () => { lines.splice(at, 0, lines[below(lines.length)]) }
  ]
  pick([...kinds.slice(0, 3), ...kinds.slice(0, 3), ...kinds])()
  return lines.join('\n')
}

function compare(text, line, around) {
  const told = whole.load('k.play', text, line)
  const short = around && around.load({name: 'k.play', text, line}, (short, at) => quick.load('k.play', short, at))
  if (!short) {
    return {told, hit: false, why: ''}
  }
  const index = told.plays.findIndex((play) => !play.waiting)
  let why = JSON.stringify(told) === JSON.stringify(short) ? '' : `${JSON.stringify(told)}\nbut\n${JSON.stringify(short)}`
  told.plays[index].diagrams.forEach((_, diagram) => {
    const wishes = {checks: true, fluid: true}
    why = why || whole.draw(index, diagram, wishes, 432).svg === quick.draw(index, diagram, wishes, 432).svg ? why : `diagram ${diagram} differs`
    why = why || whole.animate(index, diagram, wishes, 'w').svg === quick.animate(index, diagram, wishes, 'w').svg ? why : `film ${diagram} differs`
  })
  return {told, hit: true, why}
}

for (const book of books) {
  for (const begun of [joined(book), tangled(joined(book))]) {
    let hits = 0, why = ''
    for (let turn = 0; turn < EDITS && !why; turn++) {
      let text = begun
      const all = whole.load('k.play', text, 0).plays, line = pick(all).line
      let around = Around.of({name: 'k.play', text, told: whole.load('k.play', text, line)})
      for (let key = 0; key < 8 && !why; key++) {
        text = edited(text, line)
        const found = compare(text, line + below(6), around)
        hits += found.hit
        why = found.why && `${found.why}\n${text}`
        around = found.hit || below(3) ? around : Around.of({name: 'k.play', text, told: found.told})
      }
    }
    check(!why, `${path.basename(book)}${begun.includes('"Second"') ? ', tangled' : ''}: ${hits} of ${EDITS * 8} keys without reading the other plays`, why)
  }
}
done()
