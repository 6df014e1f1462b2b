// SPDX-License-Identifier: MIT
// before: what was last drawn of each play, so that a word that is being written does not take the picture away. Keeps
// texts, not pictures: another step of the same, or the dark of it, is drawn from there. Knows no module.

const MOST = 100 // plays; those drawn longest ago are let go (ours)

const keyOf = (file, name) => `${file}\n${name}`

// Where a line of the new text stood in the old one.
function lineBefore(now, then, line) {
  const a = now.split('\n'), b = then.split('\n')
  let same = 0
  while (same < a.length && same < b.length && a[same] === b[same]) {
    same++
  }
  return line <= same ? line : Math.max(same, line - (a.length - b.length))
}

export class Before {
  constructor() {
    this.forget()
  }

  forget() {
    this.all = new Map()
    this.last = null
  }

  // asked: the question that brought it; play: as told; index: which of the book's
  keep(asked, play, index, told) {
    const key = keyOf(play.file, play.name)
    this.last = {asked, index, told, play}
    this.all.delete(key)
    this.all.set(key, this.last)
    if (this.all.size > MOST) {
      this.all.delete(this.all.keys().next().value)
    }
  }

  // Of this play, which cannot be drawn; one whose name is being written is known by its place in the book, one whose
  // heading is by nothing but that it was there a moment ago. null: it was never drawn.
  of(told, index, {name, text}) {
    if (text.trim() === '') {
      this.last = null // what comes is begun anew
    }
    const play = told.plays[index], {last} = this
    if (play ? !play.broken : told.errors === 0) {
      return null // it is as it is meant: without a step, without a play
    }
    const known = play && this.all.get(keyOf(play.file, play.name))
    const renamed = play && last && last.told.plays.length === told.plays.length && last.index === index
    return known || (renamed || (!play && last && last.asked.name === name) ? last : null)
  }

  // The question whose answer stands in for that of `asked`.
  question(known, asked) {
    const of = known.asked
    const line = asked.shown ? lineBefore(asked.text, of.text, asked.shown) : 0
    return {...of, label: asked.label, shown: line, dark: asked.dark, checks: asked.checks}
  }
}
