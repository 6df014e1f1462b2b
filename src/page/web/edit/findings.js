// SPDX-License-Identifier: MIT
// findings: what is said of the picture that is shown, as a list, and of the whole text, as marks in it.
import {button, element} from './elements.js'
import {fixOf} from './fix.js'

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'
const letterOf = (number) => LETTERS[(number - 1) % 26]

// A finding without a letter is of a play that cannot be drawn: it is as much in the text as a word that is not known.
const isInPicture = (one) => one.finding && one.letter > 0

// In the list: first what is wrong with the text, then what is in the picture, then the rest of this play. `old`: what
// was found where the picture is of an earlier text.
export function listed(said, play, label, old = []) {
  const errors = said.filter((one) => !isInPicture(one) && !one.accepted)
  const found = said.filter((one) => isInPicture(one) && !one.accepted && play && one.play === play.name)
  const byLetter = (a, b) => a.letter - b.letter
  return {
    errors,
    here: found.filter((one) => one.step === label).sort(byLetter),
    elsewhere: found.filter((one) => one.step !== label),
    old: old.filter((one) => one.step === label).sort(byLetter)
  }
}

export function marksOf(editor, said, play, label, name) {
  return said.filter((one) => !one.accepted && one.line > 0 && one.file === name).map((one) => {
    const here = !isInPicture(one) || (play && one.play === play.name && one.step === label)
    const letter = isInPicture(one) ? (here ? letterOf(one.letter) : '') : one.severity === 'error' ? '!' : ''
    return {from: editor.placeOf(one.line, one.column), to: editor.placeOf(one.line, one.end), severity: one.severity, here, letter}
  })
}

// "2 and 4 stand 9 ft apart": who plays is set bold.
function named(text) {
  const box = document.createDocumentFragment()
  for (const piece of text.split(/(?<![\w.`"])(x?[1-9])(?![\w.`"]|\s*(?:ft|s|m|degrees|%|in|min|pixel|of)\b)/)) {
    box.append(/^x?[1-9]$/.test(piece) ? element('b', '', piece) : piece)
  }
  return box
}

function row(said, letter, actions, className = '') {
  const item = element('li', className)
  const square = element('span', `square ${said.severity}`, letter)
  square.setAttribute('aria-hidden', 'true') // the words beside it say the same
  const words = element('p', '')
  words.append(element('span', 'unseen', `${letter ? letter + ', ' : ''}${said.severity}: `), named(said.message), ' ')
  if (said.help) {
    words.append(element('span', 'fix', said.help.replace(/^write: /, 'Try: ').replace(/^\w/, (first) => first.toUpperCase())))
  }
  const end = element('span', 'end')
  if (said.line > 0) {
    end.append(button(`line ${said.line}`, () => actions.goTo(said), 'line'))
  }
  const fix = actions.fix(said)
  if (fix) {
    const apply = button('Apply', () => actions.apply(fix), 'apply')
    apply.setAttribute('aria-label', `Apply to line ${said.line}: ${fix.insert.trim()}`)
    end.append(apply)
  }
  item.append(square, words, end)
  return item
}

// What is found in another step stands behind the button that shows it.
function ofStep(said, actions) {
  const item = row(said, '', actions, 'other')
  const step = button(said.step, () => actions.show(said.step), 'step')
  step.setAttribute('aria-label', `Show ${said.step}`)
  item.firstChild.replaceWith(step)
  return item
}

export function fixIn(editor, said, name) {
  const doc = editor.view.state.doc
  if (!said.help || said.line < 1 || said.file !== name || said.line > doc.lines) {
    return null
  }
  const line = doc.line(said.line)
  const span = {from: editor.placeOf(said.line, said.column), to: editor.placeOf(said.line, said.end)}
  const textOf = (number) => (number >= 1 && number <= doc.lines ? doc.line(number).text : '')
  return fixOf(said.help, {from: line.from, text: line.text, before: textOf(said.line - 1), after: textOf(said.line + 1)}, span)
}

// actions: {goTo(said), fix(said), apply(fix), show(label)}
export function tell(list, {errors, here, elsewhere, old}, actions) {
  const rows = [
    ...errors.map((one) => row(one, one.severity === 'error' ? '!' : 'i', actions)),
    ...here.map((one) => row(one, letterOf(one.letter), actions)),
    ...old.map((one) => row({...one, line: 0}, letterOf(one.letter), {...actions, fix: () => null}, 'old'))
  ]
  if (rows.length === 0) {
    const none = element('li', 'none')
    none.append(element('p', 'none', 'Nothing to check in this picture.'))
    rows.push(none)
  }
  list.replaceChildren(...rows, ...elsewhere.map((one) => ofStep(one, actions)))
}
