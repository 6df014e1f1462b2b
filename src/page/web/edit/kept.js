// SPDX-License-Identifier: MIT
// kept: when what was typed is saved, what the page says about it, and what is done when two have written at once.
// Takes a store (see store.js); knows no editor but through the functions it is given.
const SAVE = 500 // ms after the last key before what was typed is saved (ours)
const AGAIN = 2000 // ms before the next try where the program does not answer (ours)

export const dayOf = (time) =>
  new Date(time).toLocaleString('en-US', {month: 'short', day: 'numeric', hour: 'numeric', minute: '2-digit'})

export class Kept {
  // given: {store, text() of the editor, become(text), files(includes), notice(text, ...actions), tell(text)}
  constructor(given) {
    Object.assign(this, given)
    this.saved = null // what the store has, as far as this page knows
    this.busy = false
    this.said = '' // of a quarrel that goes on
    this.keptAs = '' // the file beside it in which this page's text lies meanwhile
    this.gone = null // as it was told when the file was gone
    this.offered = null // an earlier page's text that is asked about
    this.troubled = '' // the page says that it could not be saved
    this.locked = ''
    this.fresh = false // there was no file when it was opened, and is none yet
    this.begun = false
    addEventListener('beforeunload', (event) => this.asksToStay(event))
    addEventListener('keydown', (event) => this.key(event))
  }

  // The store's text is in the editor.
  begin(told) {
    clearTimeout(this.timer)
    this.tell('')
    this.saved = this.text()
    this.locked = told.writable === false ? told.why : ''
    this.fresh = Boolean(told.new && !told.gone)
    this.begun = true
    const left = this.store.left(this.saved)
    if (this.locked) {
      this.tell('read only')
    }
    if (told.gone) {
      this.beginGone(told, left)
    } else if (left) {
      this.offer(left)
    } else if (this.locked) {
      this.notice(`${this.locked}. What you change here is not saved; Download keeps it.`)
    } else if (told.new) {
      this.notice(`${told.name} is not there yet: it is made when you write the first word.`)
    }
    this.store.watch((theirs) => this.changedElsewhere(theirs))
  }

  // It lay there when the program began: the newest that was written goes on, here or as it last was there.
  beginGone(told, left) {
    this.keptAs = left ? left.kept : ''
    this.isGone({...told, kept: this.keptAs})
    if (left) {
      this.become(left.text)
      this.store.forgetDraft(left)
    }
    if (this.locked) {
      this.notice(`${this.locked}. Your text is here, and is not saved: Download keeps it.`)
    }
  }

  // What was typed in an earlier page and is not in the file.
  offer(left) {
    const kept = left.kept ? ` It is kept as ${left.kept}.` : ''
    this.offered = left
    this.notice(`What you wrote here ${dayOf(left.at)} was not saved in ${this.store.name}.${kept}`, ['Put it back', async () => {
      this.become(left.text)
      if (this.locked) {
        return
      }
      clearTimeout(this.timer)
      this.store.keepDraft(left.text, left.kept)
      this.endOffer()
      if (this.store.isOver(left)) {
        await this.save()
      } else {
        await this.keepMine({version: this.store.version}) // what came into the file since is kept beside it
      }
    }], ['Leave it out', () => this.endOffer()])
  }

  endOffer() {
    this.store.forgetDraft(this.offered)
    this.offered = null
  }

  // This page began while the file was gone: what is saved over that would make it again, unasked.
  wouldMake() {
    return this.gone !== null && this.gone.version === this.store.version
  }

  unsaved() {
    return this.begun && this.store.kind === 'server' && this.text() !== this.saved
  }

  asksToStay(event) {
    if (this.unsaved()) {
      this.store.keepDraft(this.text(), this.keptAs)
      event.preventDefault()
      event.returnValue = '' // older browsers ask for this
    }
  }

  key(event) {
    if (this.store.kind === 'server' && (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey && event.key.toLowerCase() === 's') {
      event.preventDefault()
      if (this.gone) {
        this.keepMine(this.gone)
      } else if (!this.locked && this.unsaved()) {
        clearTimeout(this.timer)
        this.save()
      }
    }
  }

  touched() {
    if (this.locked) {
      return
    }
    const same = this.text() === this.saved && !this.said
    clearTimeout(this.timer)
    if (this.wouldMake()) {
      this.store.keepDraft(this.text(), this.keptAs)
      return
    }
    this.tell(same ? '' : '…')
    if (!same) {
      this.timer = setTimeout(() => this.save(), SAVE)
    }
  }

  save() {
    return this.send((text) => this.store.save(text))
  }

  keepMine(theirs) {
    clearTimeout(this.timer)
    return this.send((text) => this.store.keepMine(text, theirs), () => this.keepMine(theirs))
  }

  async send(how, again = () => this.save()) {
    if (this.busy) { // one after the other: each names the version that the one before made
      this.timer = setTimeout(again, SAVE)
      return
    }
    const text = this.text()
    this.busy = true
    this.store.keepDraft(text, this.keptAs)
    const told = await how(text)
    this.busy = false
    if (told.conflict) {
      this.quarrel(told.conflict)
    } else if (told.trouble) {
      this.isTroubled(told.trouble)
      if (told.silent) {
        clearTimeout(this.timer)
        this.timer = setTimeout(again, AGAIN)
      }
    } else {
      this.isSaved(text, told)
    }
  }

  isTroubled(words) {
    this.tell('not saved')
    if (this.troubled !== words) {
      this.offered = null // what is said next takes its place; the next page asks again
      this.said = ''
      this.notice(words)
    }
    this.troubled = words
  }

  isSaved(text, told) {
    const over = this.said || this.troubled || this.fresh
    this.saved = text
    this.settled()
    const time = new Date().toLocaleTimeString('en-US', {hour: 'numeric', minute: '2-digit'})
    this.tell(this.text() === text ? `saved ${time}` : '…')
    if (told.kept) {
      this.notice(`What was there is kept as ${told.kept}.`)
    } else if (over && !this.offered) {
      this.notice('')
    }
    if (told.includes) {
      this.files(told.includes)
    }
  }

  // The file and the page are one again.
  settled() {
    this.said = this.troubled = this.keptAs = ''
    this.gone = null
    this.fresh = false
    if (this.text() === this.saved) {
      this.store.dropDraft()
    }
  }

  // Both texts are on the disk already; which goes on is the coach's to say.
  quarrel(theirs) {
    this.keptAs = theirs.kept || ''
    this.store.keepDraft(this.text(), this.keptAs)
    this.tell('not saved')
    if (theirs.gone) {
      this.isGone(theirs)
      return
    }
    this.gone = null
    if (this.said === theirs.version + theirs.kept) {
      return // it is asked already
    }
    this.said = theirs.version + theirs.kept
    this.troubled = ''
    this.offered = null
    this.notice(theirs.message, ['Keep mine', () => {
      this.said = ''
      this.keepMine(theirs)
    }], ['Take what is there', () => this.takeTheirs(theirs)])
  }

  // The file was moved or taken away: the page is where the text is, and whether it is a file again is the coach's to say.
  isGone(theirs) {
    const kept = theirs.kept ? ` What you wrote is kept as ${theirs.kept} meanwhile.` : ''
    this.saved = null
    this.gone = theirs
    this.store.keepDraft(this.text(), this.keptAs)
    this.tell('not saved')
    if (this.said !== 'gone' + kept) {
      this.said = 'gone' + kept
      this.troubled = ''
      this.offered = null
      this.notice(`The file is gone from its folder: your text is here; save writes it again.${kept}`, ['Save it again', () => {
        this.said = ''
        this.keepMine(theirs)
      }])
    }
  }

  takeTheirs(theirs) {
    clearTimeout(this.timer)
    this.store.accept(theirs)
    this.saved = theirs.text
    this.become(theirs.text)
    clearTimeout(this.timer)
    this.settled()
    this.files(theirs.includes)
    this.tell('as it is on the disk')
    if (!this.offered) {
      this.notice(theirs.kept ? `What you wrote is kept as ${theirs.kept}.` : '')
    }
  }

  changedElsewhere(theirs) {
    const mine = this.text()
    if (this.offered && this.offered.text === theirs.text) { // it was on its way while this page was loaded
      this.endOffer()
      this.notice('')
    }
    if (theirs.new) {
      if (!this.fresh) {
        this.isGone(theirs)
      }
    } else if (theirs.text === this.saved || theirs.text === mine) { // an include, or the same by another hand
      const over = this.said
      this.store.accept(theirs)
      this.saved = theirs.text
      this.files(theirs.includes)
      if (over) {
        this.settled()
        this.notice('')
        this.touched()
      } else if (mine === theirs.text) {
        this.settled()
      }
    } else if (mine === this.saved && !this.said && (theirs.text.trim() || !mine.trim())) {
      this.takeTheirs(theirs)
    } else {
      this.save() // which the store answers with the quarrel, and keeps
    }
  }

  // While the tab closes.
  leave() {
    if (!this.begun || this.text() === this.saved) {
      return
    }
    this.store.keepDraft(this.text(), this.keptAs)
    if (!this.locked && !this.wouldMake()) {
      this.store.saveNow(this.text())
    }
  }
}
