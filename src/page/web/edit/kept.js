// SPDX-License-Identifier: MIT
// kept: when what was typed is saved, what the page says about it, and what is done when two have written at once.
// Takes a store (see store.js); knows no editor but through the functions it is given.
const SAVE = 500 // ms after the last key before what was typed is saved (ours)
const AGAIN = 2000 // ms before the next try where the program does not answer (ours)

export class Kept {
  // given: {store, text() of the editor, become(text), files(includes), notice(text, ...actions), tell(text)}
  constructor(given) {
    Object.assign(this, given)
    this.saved = null // what the store has, as far as this page knows
    this.busy = false
    this.said = '' // of a quarrel that goes on
    this.troubled = '' // the page says that it could not be saved
    this.locked = ''
  }

  // The store's text is in the editor.
  begin(told) {
    clearTimeout(this.timer)
    this.tell('')
    this.saved = this.text()
    this.locked = told.writable === false ? told.why : ''
    if (this.locked) {
      this.tell('read only')
      this.notice(`${this.locked}. What you change here is not saved; Download keeps it.`)
    } else if (told.new) {
      this.notice(`${told.name} is not there yet: it is made when you write the first word.`)
    }
    this.store.watch((theirs) => this.changedElsewhere(theirs))
  }

  touched() {
    if (this.locked) {
      return
    }
    const same = this.text() === this.saved && !this.said
    clearTimeout(this.timer)
    this.tell(same ? '' : '…')
    if (!same) {
      this.timer = setTimeout(() => this.save(), SAVE)
    }
  }

  async save() {
    if (this.busy) { // one after the other: each names the version that the one before made
      this.timer = setTimeout(() => this.save(), SAVE)
      return
    }
    const text = this.text()
    this.busy = true
    const told = await this.store.save(text)
    this.busy = false
    if (told.conflict) {
      this.quarrel(told.conflict)
    } else if (told.trouble) {
      this.isTroubled(told.trouble)
      if (told.silent) {
        clearTimeout(this.timer)
        this.timer = setTimeout(() => this.save(), AGAIN)
      }
    } else {
      this.isSaved(text, told)
    }
  }

  isTroubled(words) {
    this.tell('not saved')
    if (this.troubled !== words) {
      this.notice(words)
    }
    this.troubled = words
  }

  isSaved(text, told) {
    const troubled = this.said || this.troubled
    this.saved = text
    this.said = this.troubled = ''
    const time = new Date().toLocaleTimeString('en-US', {hour: 'numeric', minute: '2-digit'})
    this.tell(this.text() === text ? `saved ${time}` : '…')
    if (told.kept) {
      this.notice(`What was there is kept as ${told.kept}.`)
    } else if (troubled) {
      this.notice('')
    }
    if (told.includes) {
      this.files(told.includes)
    }
  }

  // Both texts are on the disk already; which goes on is the coach's to say.
  quarrel(theirs) {
    this.tell('not saved')
    if (this.said === theirs.version + theirs.kept) {
      return // it is asked already
    }
    this.said = theirs.version + theirs.kept
    this.notice(theirs.message, ['Keep mine', async () => {
      const text = this.text(), told = await this.store.keepMine(text, theirs)
      this.said = ''
      if (told.conflict) {
        this.quarrel(told.conflict)
      } else if (told.trouble) {
        this.isTroubled(told.trouble)
      } else {
        this.isSaved(text, told)
      }
    }], ['Take what is there', () => this.takeTheirs(theirs)])
  }

  takeTheirs(theirs) {
    clearTimeout(this.timer)
    this.said = ''
    this.store.accept(theirs)
    this.saved = theirs.text
    this.become(theirs.text)
    this.files(theirs.includes)
    this.tell('as it is on the disk')
    this.notice(theirs.kept ? `What you wrote is kept as ${theirs.kept}.` : '')
  }

  changedElsewhere(theirs) {
    const mine = this.text()
    if (theirs.text === this.saved || theirs.text === mine) { // an include, or the same by another hand
      this.store.accept(theirs)
      this.saved = theirs.text
      this.files(theirs.includes)
    } else if (mine === this.saved && !this.said) {
      this.takeTheirs(theirs)
    } else {
      this.save() // which the store answers with the quarrel, and keeps
    }
  }

  // While the tab closes.
  leave() {
    if (!this.locked && this.text() !== this.saved) {
      this.store.saveNow(this.text())
    }
  }
}
