// SPDX-License-Identifier: MIT
// editor: the text, in CodeMirror: colored by the core's own classes, underlined where something is found, with its
// square at the line's end, completion and what a word means. In a shadow root, where its style sheets need no
// exception from the page's policy.
import {acceptCompletion, autocompletion, closeBrackets, completionKeymap, completionStatus, moveCompletionSelection,
  selectedCompletion} from '@codemirror/autocomplete'
import {defaultKeymap, history, historyKeymap, indentLess, indentMore} from '@codemirror/commands'
import {highlightSelectionMatches, search, searchKeymap} from '@codemirror/search'
import {EditorSelection, EditorState, StateEffect, StateField} from '@codemirror/state'
import {Decoration, EditorView, MatchDecorator, ViewPlugin, WidgetType, drawSelection, highlightActiveLine, highlightActiveLineGutter, hoverTooltip, keymap,
  lineNumbers} from '@codemirror/view'
import {unlisted} from './notes.js'

const setColors = StateEffect.define()
const setMarks = StateEffect.define()

function field(effect) {
  return StateField.define({
    create: () => Decoration.none,
    update(value, transaction) {
      let next = value.map(transaction.changes)
      for (const one of transaction.effects) {
        next = one.is(effect) ? one.value : next
      }
      return next
    },
    provide: (self) => EditorView.decorations.from(self)
  })
}

const colors = field(setColors)
const marks = field(setMarks)

class Squares extends WidgetType {
  constructor(tags) {
    super()
    this.tags = tags
  }

  eq(other) {
    return JSON.stringify(other.tags) === JSON.stringify(this.tags)
  }

  toDOM() {
    const box = document.createElement('span')
    box.className = 'squares'
    box.setAttribute('aria-hidden', 'true') // the list beside says the same in words
    for (const {letter, severity} of this.tags) {
      const square = document.createElement('span')
      square.className = `square ${severity}`
      square.textContent = letter
      box.append(square)
    }
    return box
  }

  ignoreEvent() {
    return true
  }
}

// Two blanks are seen as a step of 20 px: the face's own blank is too narrow to be one.
const stepIn = new MatchDecorator({regexp: /^ +/g, decoration: Decoration.mark({class: 'indent'})})
const indents = ViewPlugin.define((view) => ({
  decorations: stepIn.createDeco(view),
  update(update) {
    this.decorations = stepIn.updateDeco(update, this.decorations)
  }
}), {decorations: (plugin) => plugin.decorations})

const look = EditorView.theme({
  '&': {height: '100%', fontSize: '15px', backgroundColor: 'transparent', color: 'var(--text)'},
  '&.cm-focused': {outline: 'none'},
  '.cm-scroller': {fontFamily: 'var(--face)', lineHeight: '25px', overflow: 'auto'},
  '.cm-content': {padding: '14px 0 40px', caretColor: 'var(--ink)'},
  '.cm-line': {padding: '0 44px 0 16px', position: 'relative'},
  '.cm-gutters': {backgroundColor: 'transparent', border: 'none', color: 'var(--soft)'},
  '.cm-lineNumbers .cm-gutterElement': {minWidth: '52px', paddingRight: '0', fontSize: '13px'},
  '.cm-activeLine, .cm-activeLineGutter': {backgroundColor: 'var(--tint)'},
  '.cm-cursor': {borderLeft: '2px solid var(--ink)'},
  '.cm-selectionBackground, &.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground':
    {backgroundColor: 'var(--chosen)'},
  '.cm-selectionMatch': {backgroundColor: 'var(--tint)'},
  '.cm-searchMatch': {backgroundColor: 'var(--chosen)'},
  '.indent': {letterSpacing: '5.8px'},
  '.k-heading': {fontWeight: '700'},
  '.k-quoted': {color: 'var(--accent)'},
  '.k-comment': {color: 'var(--soft)', fontStyle: 'italic'},
  '.k-note': {color: 'var(--soft)'},
  '.k-check': {color: 'var(--soft)'},
  '.k-error': {textDecoration: 'underline wavy var(--warning)'},
  '.found': {borderBottom: '2.5px solid var(--warning)', paddingBottom: '1px'},
  '.found.note': {borderBottomStyle: 'dotted'},
  '.found.elsewhere': {borderBottomWidth: '1px'},
  '.squares': {position: 'absolute', right: '14px', top: '3px', display: 'inline-flex', gap: '4px', pointerEvents: 'none'},
  '.square': {display: 'inline-grid', placeItems: 'center', width: '19px', height: '19px', font: '700 13px/19px var(--face)',
    backgroundColor: 'var(--warning)', color: 'var(--page)'},
  '.square.note': {backgroundColor: 'var(--page)', color: 'var(--warning)', boxShadow: 'inset 0 0 0 1.5px var(--warning)'},
  '.cm-tooltip': {backgroundColor: 'var(--page)', color: 'var(--text)', border: '1px solid var(--rule)', borderRadius: '4px'},
  '.cm-tooltip.cm-tooltip-autocomplete > ul': {fontFamily: 'var(--face)', fontSize: '14px', maxHeight: '15em'},
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': {padding: '3px 10px', lineHeight: '20px'},
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li[aria-selected]': {backgroundColor: 'var(--ink)', color: 'var(--page)'},
  '.cm-completionDetail': {fontStyle: 'normal', color: 'var(--soft)', marginLeft: '1em'},
  'li[aria-selected] .cm-completionDetail': {color: 'var(--page)'},
  '.cm-completionMatchedText': {textDecoration: 'none', fontWeight: '700'},
  '.said': {padding: '8px 12px', maxWidth: '420px', fontSize: '14px', lineHeight: '20px'},
  '.said p': {margin: '0 0 4px'},
  '.said b': {fontWeight: '700'},
  '.said .example': {color: 'var(--soft)', whiteSpace: 'pre-wrap'},
  '.cm-panels': {backgroundColor: 'var(--page)', color: 'var(--text)', borderTop: '1px solid var(--rule)'},
  '.cm-panel input, .cm-panel button': {font: 'inherit', color: 'var(--text)', backgroundColor: 'var(--page)',
    backgroundImage: 'none', border: '1px solid var(--rule)', borderRadius: '4px'}
})

function paragraph(box, text, className = '') {
  if (text) {
    const p = document.createElement('p')
    p.className = className
    p.textContent = text
    box.append(p)
  }
}

function hoverBox(said) {
  const box = document.createElement('div')
  box.className = 'said'
  for (const one of said) {
    const title = document.createElement('b')
    title.textContent = one.title
    const p = document.createElement('p')
    p.append(title)
    box.append(p)
    paragraph(box, one.text)
    paragraph(box, one.example, 'example')
  }
  return box
}

// Tab takes the first of the list, or what was gone to in it; without a list it leaves the text.
function take(view) {
  if (completionStatus(view.state) !== 'active') {
    return false
  }
  if (!selectedCompletion(view.state)) {
    moveCompletionSelection(true)(view)
  }
  acceptCompletion(view)
  return true // where the list is too new to be taken from, the key is not to leave the text either
}

// options: {parent, text, changed(text), moved(line), complete(text, at), hover(text, at)}
export function openEditor(options) {
  const root = options.parent.attachShadow({mode: 'open'})
  const place = document.createElement('div')
  place.className = 'place'
  root.append(place)
  const sheet = new CSSStyleSheet()
  sheet.insertRule('.place { height: 100% }')
  root.adoptedStyleSheets = [sheet]
  let classes = []

  const complete = async (context) => {
    const before = context.matchBefore(/[^\n]*/)
    if (!context.explicit && !/[\w"]$/.test(before.text)) {
      return null
    }
    const found = await options.complete(context.state.doc.toString(), context.pos)
    if (!found || found.length === 0) {
      return null
    }
    return {
      from: found[0].from,
      filter: false,
      options: found.map(({text, what, kind}) => ({label: text, detail: what, type: kind}))
    }
  }

  const hover = hoverTooltip(async (view, at) => {
    const said = await options.hover(view.state.doc.toString(), at)
    if (!said || said.length === 0) {
      return null
    }
    return {pos: said[0].from, end: said[0].to, above: true, create: () => ({dom: hoverBox(said)})}
  })

  const listen = EditorView.updateListener.of((update) => {
    if (update.docChanged) {
      options.changed(update.state.doc.toString())
    } else if (update.selectionSet) {
      options.moved(update.state.doc.lineAt(update.state.selection.main.head).number)
    }
  })

  const view = new EditorView({
    parent: place,
    root,
    state: EditorState.create({
      doc: options.text,
      extensions: [
        lineNumbers(), highlightActiveLine(), highlightActiveLineGutter(), history(), drawSelection(), search(),
        highlightSelectionMatches(), closeBrackets(), EditorView.lineWrapping,
        // nothing is chosen of itself: Enter makes a new line
        autocompletion({override: [complete], icons: false, selectOnOpen: false}),
        hover, colors, marks, indents, look, listen, EditorView.clipboardInputFilter.of(unlisted),
        EditorView.contentAttributes.of({'aria-label': 'The text of your plays', spellcheck: 'false', autocapitalize: 'off'}),
        keymap.of([{key: 'Tab', run: take}, {key: 'Mod-]', run: indentMore}, {key: 'Mod-[', run: indentLess}, ...completionKeymap, ...defaultKeymap,
          ...historyKeymap, ...searchKeymap])
      ]
    })
  })

  // The editor itself waits a while until it lays out lines and their numbers for another width.
  new ResizeObserver(() => view.requestMeasure()).observe(place)
  view.scrollDOM.tabIndex = 0 // so that a long text can be scrolled by keys without writing in it

  const clamp = (place) => Math.min(place, view.state.doc.length)

  return {
    view,
    text: () => view.state.doc.toString(),
    line: () => view.state.doc.lineAt(view.state.selection.main.head).number,
    useClasses(names) {
      classes = names
    },

    // [from, to, class] of the text as it was handed out; a text that was changed since is not colored by it.
    color(tokens, text) {
      if (text !== view.state.doc.toString()) {
        return
      }
      const found = []
      for (let i = 0; i < tokens.length; i += 3) {
        if (tokens[i + 1] > tokens[i]) {
          found.push(Decoration.mark({class: 'k-' + classes[tokens[i + 2]]}).range(tokens[i], tokens[i + 1]))
        }
      }
      view.dispatch({effects: setColors.of(Decoration.set(found, true))})
    },

    // {from, to, severity, here, letter}: letter only of what is in the picture.
    mark(list) {
      const found = [], squares = new Map()
      for (const {from, to, severity, here, letter} of list) {
        const begin = clamp(from), end = clamp(to)
        if (end > begin) {
          const kind = `found ${severity}${here ? '' : ' elsewhere'}`
          found.push(Decoration.mark({class: kind}).range(begin, end))
        }
        if (letter) {
          const line = view.state.doc.lineAt(begin).number
          squares.set(line, [...(squares.get(line) || []), {letter, severity}])
        }
      }
      for (const [line, tags] of squares) {
        const at = view.state.doc.line(line).to
        found.push(Decoration.widget({widget: new Squares(tags), side: 1}).range(at))
      }
      view.dispatch({effects: setMarks.of(Decoration.set(found, true))})
    },

    replace(text) {
      view.dispatch({changes: {from: 0, to: view.state.doc.length, insert: text}, selection: EditorSelection.cursor(0)})
    },

    // Only what differs is changed, so that the cursor stays where it is.
    become(text) {
      const now = view.state.doc.toString()
      let head = 0, tail = 0
      while (head < now.length && head < text.length && now[head] === text[head]) {
        head++
      }
      while (tail < now.length - head && tail < text.length - head && now[now.length - 1 - tail] === text[text.length - 1 - tail]) {
        tail++
      }
      view.dispatch({changes: {from: head, to: now.length - tail, insert: text.slice(head, text.length - tail)}})
    },

    change(from, to, insert) {
      view.dispatch({changes: {from, to, insert}, selection: EditorSelection.cursor(from + insert.length), scrollIntoView: true})
    },

    goTo(line) {
      const at = view.state.doc.line(Math.min(Math.max(line, 1), view.state.doc.lines))
      view.dispatch({selection: EditorSelection.cursor(at.to), effects: EditorView.scrollIntoView(at.from, {y: 'center'})})
      view.focus()
    },

    // Where line and code points of a finding are in the text.
    placeOf(line, column) {
      if (line < 1 || line > view.state.doc.lines) {
        return 0
      }
      const at = view.state.doc.line(line)
      return at.from + Math.min([...at.text].slice(0, column - 1).join('').length, at.length)
    }
  }
}
