// SPDX-License-Identifier: MIT
// print: sheets for the browser's own printing: picked, seen on the screen, then printed on letter or A4. Where the
// program serves the page, it makes them as PDF itself.
import {button, element} from './elements.js'
import {handOut} from './hand_out.js'
import {bare} from './picture.js'
import {strip} from './watch.js'

const SHEETS = [['handout', 'Handout'], ['own', 'One player\u2019s handout'], ['coach', 'Coach sheet'], ['card', 'Card'],
  ['practice', 'Practice plan']]

const NUMBER = '@bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt sans-serif; color: #4d4d4d; vertical-align: top; padding-top: 4pt; }'
const pageSize = new CSSStyleSheet()
document.adoptedStyleSheets = [...document.adoptedStyleSheets, pageSize]

function labelled(text, control) {
  const label = document.createElement('label')
  label.append(text, control)
  return label
}

function select(name, rows) {
  const one = document.createElement('select')
  one.name = name
  one.append(...rows.map(([value, text]) => new Option(text, value)))
  return one
}

// As HTML of the core: no style of its own, which the page's policy would refuse.
function pieces(html) {
  return [...new DOMParser().parseFromString(bare(html), 'text/html').body.childNodes].map((node) => document.adoptNode(node))
}

export class Paper {
  // paper: the section; make({sheet, play, reader, names, a4}): of the core; book(): {told, play}; store; brokenAt(): " in line 12"; closed()
  constructor(paper, {make, book, store, text, brokenAt, closed}) {
    Object.assign(this, {paper, make, book, store, text, brokenAt, closed})
  }

  open() {
    const {told, play} = this.book()
    this.sheet = select('sheet', SHEETS.filter(([word]) => word !== 'practice' || told.practices.length > 0))
    this.which = select('which', [...(play >= 0 ? [[String(play), told.plays[play].name]] : []), ['-1', 'All plays']])
    const named = (number) => told.players.find((player) => player.number === number && player.starter)
    this.reader = select('reader', [1, 2, 3, 4, 5].map((number) => [String(number), named(number) ? `${number} ${named(number).name}` : String(number)]))
    this.size = select('size', [['letter', 'Letter'], ['a4', 'A4']])
    this.names = document.createElement('input') // numbers alone unless it is asked for: players are mostly minors
    Object.assign(this.names, {type: 'checkbox', name: 'names'})
    const bar = element('div', 'chooser')
    const form = document.createElement('form')
    this.player = labelled('Player', this.reader)
    this.plays = labelled('Of', this.which)
    const names = labelled('Names', this.names)
    this.printing = button('Print\u2026', () => print())
    names.hidden = told.players.length === 0
    form.append(labelled('Sheet', this.sheet), this.player, this.plays, labelled('Paper', this.size), names, this.printing)
    if (this.store.kind === 'server') {
      form.append(button('PDF', () => this.pdf()))
    }
    form.append(button('Back', () => this.close()))
    form.addEventListener('change', () => this.show())
    form.addEventListener('submit', (event) => event.preventDefault())
    bar.append(form)
    this.body = document.createElement('div')
    this.trouble = document.createElement('p')
    this.trouble.setAttribute('role', 'status')
    this.paper.replaceChildren(bar, this.trouble, this.body)
    this.paper.hidden = false
    document.getElementById('desk').hidden = true
    this.sheet.focus()
    return this.show()
  }

  close() {
    this.paper.hidden = true
    this.paper.replaceChildren()
    document.getElementById('desk').hidden = false
    this.closed()
  }

  wanted() {
    const own = this.sheet.value === 'own'
    return {
      sheet: own ? 'handout' : this.sheet.value,
      play: this.sheet.value === 'practice' ? -1 : Number(this.which.value),
      reader: own ? Number(this.reader.value) : 0,
      names: this.names.checked,
      a4: this.size.value === 'a4'
    }
  }

  async show() {
    const wanted = this.wanted()
    this.player.hidden = this.sheet.value !== 'own'
    this.plays.hidden = this.sheet.value === 'practice'
    pageSize.replaceSync(`@page { size: ${wanted.a4 ? 'A4' : 'letter'}; margin: 0.4in 0.75in 0.55in; ${NUMBER} }`)
    this.printing.disabled = true // nothing is printed before it is there
    const made = await this.make(wanted)
    this.trouble.textContent = this.troubleOf(wanted, made)
    this.printing.disabled = !made.html
    this.body.replaceChildren(...pieces(made.html))
    if (wanted.sheet === 'coach') {
      this.time(made.segments)
    }
    document.documentElement.dataset.paper = `${this.sheet.value} ${this.size.value}`
  }

  troubleOf(wanted, {html, broken, status}) {
    const where = broken.length > 0 ? this.brokenAt() : ''
    if (!html) {
      return broken.length > 0 || status === 'broken' ? `There is an error${where}: the play is printed when that is mended.` : 'There is nothing in the book for this sheet.'
    }
    return broken.length === 0 || wanted.sheet === 'practice' ? ''
      : wanted.play < 0 ? `Left out, with an error${where}: ${broken.join(', ')}.` : `${broken[0]} as it was before the error${where}.`
  }

  // The coach's sheet has under each step who does what when; a read goes on from there.
  time(segments) {
    const steps = this.body.querySelectorAll('.sheet')
    steps.forEach((sheet, play) => sheet.querySelectorAll('.step.whole').forEach((step) => {
      const segment = segments[play] && segments[play][Number(step.dataset.diagram)]
      if (segment) {
        const box = element('div', 'timing')
        box.append(strip(segment, 672, Number(step.dataset.tasks))) // px: the sheet's 7 in
        step.append(box)
      }
    }))
  }

  async pdf() {
    const wanted = this.wanted(), {told} = this.book()
    const plays = wanted.play < 0 ? [] : [told.plays[wanted.play].name]
    try {
      const file = await this.store.sheet({sheet: wanted.sheet, paper: this.size.value, reader: wanted.reader, names: wanted.names, plays}, this.text())
      handOut(file, `${wanted.sheet}.pdf`)
    } catch (thrown) {
      this.trouble.textContent = thrown.message
    }
  }
}
