// SPDX-License-Identifier: MIT
// again: a key in one play of a large book. What was told of the whole text stays true of the plays that neither name
// this one nor are named with it: they are handed over as headings alone, and what is said of them is taken from before,
// by as many lines further down. Where it is not certain that nothing else can change, there is no answer, and the text is
// to be read whole. Knows no module; tests/wasm/again.mjs holds its answers against those of the whole text.

const plain = (text) => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '')
const linesIn = (text) => text.split('\n').length - 1
const HEADING = /^[ \t]+(playbook|team|play|drill|action|practice|charted|chapter|include|courtwright)\b/im
const ALOUD = /\b(play|drill)\b[^\n]*$/im // in a body that is to be left out: it may be a heading as it is said
const MOST = 400 // diagnostics: past 500 they are only counted

const counted = (said) => ({
  errors: said.filter((one) => one.severity === 'error').length,
  warnings: said.filter((one) => one.severity === 'warning' && !one.accepted).length
})

// What can be reckoned with: one text, every diagnostic on a line of its, all of them there.
function isPlain({name, told}) {
  const count = counted(told.said)
  return told.plays.every((play) => play.file === name) && told.said.length < MOST &&
    told.said.every((one) => one.file === name && one.line > 0 && !one.id.startsWith('file.')) &&
    count.errors === told.errors && count.warnings === told.warnings
}

// The text around a play, in pieces that begin where a line is not indented.
function blocksOf(text, first, plays) {
  const blocks = [{from: first, text: ''}]
  text.split(/(?<=\n)/).forEach((line, index) => {
    if (/^[^\s#]/.test(line)) {
      blocks.push({from: first + index, text: ''})
    }
    blocks[blocks.length - 1].text += line
  })
  for (const block of blocks) {
    block.to = block.from + block.text.split(/(?<=\n)/).filter(Boolean).length
    block.plain = plain(block.text)
    block.play = plays.findIndex((play) => play.line === block.from)
    const head = block.text.slice(0, block.text.indexOf('\n') + 1), body = block.text.slice(head.length)
    block.short = block.play >= 0 && head && !HEADING.test(body) && !ALOUD.test(body) ? head + '\n'.repeat(linesIn(body)) : null
    block.waits = /^(practice|charted|chapter)\b/i.test(block.text) // with plays in it, which do not wait for it
  }
  return blocks
}

export class Around {
  // told of that text with one play run; null: it does not stand by itself
  static of({name, text, told}) {
    const index = told.plays.findIndex((play) => !play.waiting), play = told.plays[index]
    if (!play || text.includes('\r') || /^\s*include\b/im.test(text) || !isPlain({name, told})) {
      return null
    }
    const lines = text.split(/(?<=\n)/), next = told.plays.map((one) => one.line).filter((line) => line > play.line)
    const to = Math.min(lines.length + 1, ...next), heading = lines[play.line - 1]
    const around = new Around()
    Object.assign(around, {name, told, index, from: play.line, to, own: plain(play.name)})
    around.before = lines.slice(0, play.line).join('')
    around.after = lines.slice(to - 1).join('')
    around.length = linesIn(lines.slice(play.line, to - 1).join(''))
    around.blocks = [...blocksOf(lines.slice(0, play.line - 1).join(''), 1, told.plays), ...blocksOf(around.after, to, told.plays)]
    around.heading = heading
    around.acts = (text.match(/^.*\baction\b.*$/gim) || []).map((line) => plain(line.split('"')[1] || '')) // none: any text has it
    around.names = told.plays.map((one) => plain(one.name))
    const alone = heading.endsWith('\n') && !/\bmirrors?\b/i.test(heading) && around.names.filter((one) => one === around.own).length === 1
    return alone && around.lean() ? around : null
  }

  // What names this play, or a play that does, is read again; so is every play named there.
  lean() {
    const names = [this.own]
    let more = true
    while (more) {
      more = false
      for (const block of this.blocks.filter((one) => !one.leans && names.some((name) => one.plain.includes(name)))) {
        block.leans = more = true
        if (block.play >= 0) {
          names.push(this.names[block.play])
        }
      }
    }
    const needed = this.blocks.filter((block) => block.leans || (block.play < 0 && !block.waits))
    for (const block of needed) { // it grows
      const named = this.blocks.filter((one) => one.play >= 0 && !one.leans && !one.needed && block.plain.includes(this.names[one.play]))
      named.forEach((one) => {
        one.needed = true
      })
      needed.push(...named)
    }
    this.beside = this.blocks.map((block) => block.leans || block.needed || !block.short ? block.text : block.short)
    const ahead = this.blocks.filter((block) => block.from < this.from).length
    this.shortBefore = this.beside.slice(0, ahead).join('') + this.heading
    this.shortAfter = this.beside.slice(ahead).join('')
    return this.own !== '' && this.names.every((name) => name !== '')
  }

  // A play that stands on another, or on an action, is not read by itself.
  leansOnOthers(text) {
    const words = plain(text)
    return this.names.some((name, index) => index !== this.index && words.includes(name)) ||
      this.acts.some((name) => words.includes(name)) || /\bsame\b/i.test(text)
  }

  middle(text) {
    const {before, after} = this
    if (text.length < before.length + after.length || !text.startsWith(before) || !text.endsWith(after)) {
      return null
    }
    const middle = text.slice(before.length, text.length - after.length)
    return (after && middle && !middle.endsWith('\n')) || this.leansOnOthers(middle) ? null : middle
  }

  // What core.load would tell of the text with the play of that line run. read(text, line): as core.load does.
  load({name, text, line}, read) {
    const middle = name === this.name && !text.includes('\r') && !/^\s*include\b/im.test(text) ? this.middle(text) : null
    const shift = middle === null ? 0 : linesIn(middle) - this.length
    if (middle === null || line < this.from || (this.after && line >= this.to + shift)) {
      return null
    }
    return this.merged(read(this.shortBefore + middle + this.shortAfter, line), shift)
  }

  merged(now, shift) {
    const {told} = this, moved = (one) => (one.line >= this.to ? {...one, line: one.line + shift} : one)
    const lean = this.blocks.filter((block) => block.leans)
    const plays = told.plays.map((play, index) => ({...moved(play), chapter: now.plays[index]?.chapter})), same = ['title', 'team', 'players', 'practices']
    if (!isPlain({name: this.name, told: now}) || now.plays.length !== plays.length ||
        !plays.every((play, index) => play.name === now.plays[index].name && play.line === now.plays[index].line) ||
        !same.every((key) => JSON.stringify(told[key]) === JSON.stringify(now[key])) || now.plays[this.index].waiting) {
      return null
    }
    lean.filter((block) => block.play >= 0).forEach(({play}) => {
      plays[play] = now.plays[play]
    })
    plays[this.index] = now.plays[this.index]
    const among = (line, by) => (line >= this.from && (!this.after || line < this.to + by)) ||
      lean.some((block) => {
        const on = block.from >= this.to ? by : 0
        return line >= block.from + on && line < block.to + on
      })
    const said = [...told.said.filter((one) => !among(one.line, 0)).map(moved), ...now.said.filter((one) => among(one.line, shift))]
      .sort((a, b) => a.line - b.line)
    const astray = [...told.said.filter((one) => !among(one.line, 0)), ...now.said.filter((one) => !among(one.line, shift))]
      .some((one) => one.play === plays[this.index].name)
    return astray || said.length >= MOST ? null : {...now, ...counted(said), plays, said}
  }
}
