// SPDX-License-Identifier: MIT
// ahead: the picture that a page opens with, before its module is there. That of the sample is drawn as the page is made
// (drawn.mjs), that of a text of one's own is kept in this browser when the keys rest. The module draws it again as soon
// as it can; a picture of another text, or by another module, is never shown. Knows no module.
import {playLine} from './headings.js'

const KEPT = 'courtwright-ahead'
const MOST = 200000 // characters of a text with its includes; a larger one waits for the module (ours)

// What a page asks for first, of a text that it opens with.
export function opening({name, text}, dark) {
  return {name, text, line: playLine(text, 1) || 1, file: '', shown: 1, label: '', dark, checks: true}
}

export class Ahead {
  // drawn: {module: which one drew, light, dark: pictures of the sample}
  constructor(drawn, sample) {
    this.drawn = drawn
    this.sample = sample
  }

  key(asked, includes) {
    return JSON.stringify([this.drawn.module, asked, includes || {}])
  }

  // null: there is none
  find(asked, includes) {
    const key = this.key(asked, includes)
    if (key === this.key(opening(this.sample, asked.dark), {})) {
      return asked.dark ? this.drawn.dark : this.drawn.light
    }
    try {
      const kept = JSON.parse(localStorage.getItem(KEPT))
      return kept && kept.key === key ? kept.svg : null
    } catch {
      return null // no storage here, or none of ours
    }
  }

  // Not yet there, and worth being.
  misses(asked, includes) {
    const key = this.key(asked, includes)
    return key.length < MOST && !this.find(asked, includes)
  }

  keep(asked, includes, svg) {
    try {
      localStorage.setItem(KEPT, JSON.stringify({key: this.key(asked, includes), svg}))
    } catch {
      // full, or forbidden: the next page waits for its module
    }
  }
}
