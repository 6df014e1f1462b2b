// SPDX-License-Identifier: MIT
// store: where the page's text lives. Two stores with one face:
//
//   store.kind                 'tab' | 'server'
//   store.guess()              what will most likely be opened, at once; null: nobody can say yet
//   await store.open()         {name, text, includes: {name: text}}; the server's also {writable, why, new}
//   store.turnTo(name, includes, id)   from now on it is this text that is kept
//   await store.drafts()       others that were written in this browser: [{id, name, text, includes, at}]; the tab's
//   await store.save(text)     {includes?} | {conflict: theirs} | {trouble: 'in words', silent?: nobody answered}
//   await store.keepMine(text, theirs)   as save, over that conflict; {kept: 'name'}: what lay there is beside it
//   store.accept(theirs)       the page goes on from that text
//   store.saveNow(text)        without waiting: while the tab closes
//   store.watch(changed)       calls changed(theirs) when it was changed elsewhere, an include too
//   await store.sheet(options, text)   a PDF as a Blob, or null: this store makes none
//   store.keepDraft(text, kept)   in this browser, until dropDraft(): it is not in the file yet
//   store.left(text)           {text, kept, at, ...} of an earlier page, the newest; null: none, or the same as `text`
//   store.isOver(left)         whether the file is still what that text was written over
//   store.forgetDraft(left)
//   theirs                     {text, version, includes, message, kept?: the name under which this page's text lies}
//
// The tab's is the browser's own storage (nothing leaves the machine). The server's is `courtwright open FILE`.
//
// ---- What the page and the server have agreed on ----
//
// The server gives out the same file as `courtwright open --offline`, with two changes, both found once in it:
//   <!--courtwright-server-->   becomes   <meta name="courtwright-server" content="TOKEN">
//   connect-src 'none'          becomes   connect-src 'self'
// (that one in the meta element of the policy; a header says the same).
// All addresses begin with /TOKEN/, the page's own is /TOKEN/ itself. Every request comes from the page's own
// origin, with fetch, mode same-origin, no cookies. Texts are UTF-8, to the byte as on the disk. A version is a string
// of letters and digits with a hyphen in it: what stands before differs whenever the bytes of the file do, what stands
// behind whenever those of its includes do. It travels in quotes, as an ETag.
//
//   GET  /TOKEN/file        200, application/json:
//                           {"name": "kites.play", "text": "…", "version": "…", "new": there is no file,
//                            "gone": there was one: the text is the last that lay there,
//                            "writable": true, "why": "where it is not",
//                            "includes": [{"name": "motion.play", "text": "…"}]}  what the saved text includes
//        If-None-Match: "V" 304 while the version is still V. The page asks every two seconds while it is seen.
//   PUT  /TOKEN/file        the body is the text, text/plain; written beside and renamed.
//        If-Match: "V"      the version the page knew; only its first part counts.
//                           200 {"version", "includes"}   saved
//                           412 {"text", "version", "includes", "gone", "message", "kept": "kites (from the page).play"}
//                                it was changed meanwhile; not written over, but this text is kept beside it
//        ?page=ID           which page this is: what two of them wrote is kept in two places
//        &keep=yes          with If-Match of that newer version: what is on disk is first kept beside it, if it is anything:
//                           200 {"version", "includes", "kept": "kites (from the folder).play"}
//   POST /TOKEN/sheet?sheet=handout&paper=letter&reader=3&play=Lantern
//                           the body is the text as it stands in the page. sheet: handout, coach, fill-in, card,
//                           practice, chart, trend, book; paper: letter, a4; reader 0..5 (0: everybody's), or for: a
//                           name; play: may come more than once; none: all. Also per-page, names=1, title, date, seed.
//                           200 application/pdf; 422 {"message": "why not, in words"}; 503 one is being made
//   anything else           404. Trouble of any kind: a status of 400 or more, with {"message": "in words"} where
//                           there is something to say; 429 when asked too often, 413 when the text is too large,
//                           403 where it may not be written, 507 when it could not be.

const DRAFTS = 'courtwright'
const DRAFTS_MOST = 30 // older ones are let go (ours)
const LEFT = 'courtwright-open' // what a page of a file could not save, one entry for each page
const LEFT_MOST = 5 // of one file (ours)
const EVERY = 2000 // ms between two looks at the file

function freshId() {
  return [...crypto.getRandomValues(new Uint32Array(2))].map((part) => part.toString(36)).join('')
}

// ---- the tab's own: IndexedDB, and localStorage for what must be written while the tab closes ----

function wish(request) {
  return new Promise((good, bad) => {
    request.onsuccess = () => good(request.result)
    request.onerror = () => bad(request.error)
  })
}

async function database() {
  const asked = indexedDB.open(DRAFTS, 1)
  asked.onupgradeneeded = () => asked.result.createObjectStore('drafts', {keyPath: 'id'})
  return wish(asked)
}

export class TabStore {
  constructor(sample) {
    this.kind = 'tab'
    this.sample = {...sample, includes: {}}
    this.name = sample.name
    this.includes = {}
  }

  guess() {
    const quick = this.quick(), session = this.session()
    return !quick ? this.sample : !session || session === quick.id ? quick : null
  }

  // What this tab had open, else what was last written here in any.
  async open() {
    try {
      this.db = await database()
    } catch {
      this.db = null // the quick copy alone is kept then
    }
    const all = await this.all(), own = all.find((draft) => draft.id === this.session()), found = own || all[0]
    const {name, text, includes} = found || this.sample
    this.turnTo(name, includes || {}, own && own.id)
    this.forget(all.slice(DRAFTS_MOST))
    return {name, text, version: '', includes: this.includes, id: this.id}
  }

  // From now on it is this text that is kept; without an id a new one beside all the others.
  turnTo(name, includes, id) {
    this.name = name
    this.includes = includes
    this.id = id || freshId()
    try {
      sessionStorage.setItem(DRAFTS, this.id)
    } catch {
      // a reload takes the last written then
    }
  }

  // Texts that were written here, the newest first, but for the one that is open.
  async drafts() {
    return (await this.all()).filter((draft) => draft.id !== this.id)
  }

  async all() {
    const quick = this.quick()
    let all = []
    try {
      all = await wish(this.db.transaction('drafts').objectStore('drafts').getAll())
    } catch {
      all = []
    }
    const kept = quick ? all.find((draft) => draft.id === quick.id) : null
    if (quick && (!kept || kept.at < quick.at)) {
      all = [...all.filter((draft) => draft !== kept), quick]
    }
    return all.sort((a, b) => b.at - a.at)
  }

  forget(old) {
    if (this.db && old.length > 0) {
      const drafts = this.db.transaction('drafts', 'readwrite').objectStore('drafts')
      old.forEach((draft) => drafts.delete(draft.id))
    }
  }

  session() {
    try {
      return sessionStorage.getItem(DRAFTS)
    } catch {
      return null
    }
  }

  quick() {
    try {
      return JSON.parse(localStorage.getItem(DRAFTS))
    } catch {
      return null // no storage here, or none of ours
    }
  }

  draft(text) {
    return {id: this.id, name: this.name, text, includes: this.includes, at: Date.now()}
  }

  async save(text) {
    const draft = this.draft(text)
    const quick = this.saveNow(text)
    try {
      await wish(this.db.transaction('drafts', 'readwrite').objectStore('drafts').put(draft))
      return {version: ''}
    } catch {
      return quick ? {version: ''} : {trouble: 'This browser keeps nothing here: download the file before you close the tab.'}
    }
  }

  // Without waiting: while the tab closes.
  saveNow(text) {
    try {
      localStorage.setItem(DRAFTS, JSON.stringify(this.draft(text)))
      return true
    } catch {
      return false // full, or forbidden
    }
  }

  accept() {}

  watch() {}

  // All that is written here is a draft.
  keepDraft() {}

  dropDraft() {}

  forgetDraft() {}

  left() {
    return null
  }

  isOver() {
    return true
  }

  async sheet() {
    return null
  }
}

// ---- the server's ----

export class ServerStore {
  constructor(token) {
    this.kind = 'server'
    this.base = `/${token}/`
    this.version = '' // of the text that the page goes on from
    this.seen = '' // the newest that was told of
    this.end = '\n'
    this.mark = ''
    this.page = freshId()
  }

  guess() {
    return null
  }

  turnTo(name, includes) {
    this.name = name
    this.includes = includes
  }

  async drafts() {
    return [] // there is the file
  }

  // What this page could not save yet, for the next page of the same file from the same port.
  keepDraft(text, kept) {
    try {
      localStorage.setItem(`${LEFT}/${this.name}/${this.page}`, JSON.stringify({text, kept, over: this.version, at: Date.now()}))
    } catch {
      // full, or forbidden: it is in the tab alone
    }
  }

  dropDraft() {
    this.forgetDraft({key: `${LEFT}/${this.name}/${this.page}`})
  }

  forgetDraft(left) {
    try {
      localStorage.removeItem(left.key)
    } catch {
      // there is none then
    }
  }

  left(text) {
    let all = []
    try {
      const keys = Object.keys(localStorage).filter((key) => key.startsWith(`${LEFT}/${this.name}/`))
      all = keys.map((key) => ({...JSON.parse(localStorage.getItem(key)), key})).sort((a, b) => b.at - a.at)
    } catch {
      return null
    }
    const other = all.filter((left) => left.text !== text)
    all.filter((left) => left.text === text).concat(other.slice(LEFT_MOST)).forEach((left) => this.forgetDraft(left))
    return other[0] || null
  }

  isOver(left) {
    return left.over.split('-')[0] === this.version.split('-')[0]
  }

  async ask(path, options = {}) {
    return fetch(this.base + path, {mode: 'same-origin', credentials: 'omit', cache: 'no-store', ...options})
  }

  // As the page has it: lines that end in \n, includes by name.
  read(told) {
    this.seen = told.version
    const includes = told.includes && Object.fromEntries(told.includes.map((file) => [file.name, file.text]))
    const text = told.text && told.text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n')
    return {...told, text, includes}
  }

  // As the file has it.
  write(text) {
    return this.mark + (this.end === '\n' ? text : text.replace(/\n/g, this.end))
  }

  accept(theirs) {
    this.version = theirs.version
  }

  async open() {
    const answer = await this.ask('file')
    if (!answer.ok) {
      throw new Error(await trouble(answer))
    }
    const told = await answer.json()
    this.version = told.version
    this.name = told.name
    this.end = told.text.includes('\r\n') ? '\r\n' : '\n'
    this.mark = told.text.startsWith('\uFEFF') ? '\uFEFF' : ''
    return this.read(told)
  }

  request(text, version) {
    return {
      method: 'PUT',
      body: this.write(text),
      headers: {'If-Match': `"${version}"`, 'Content-Type': 'text/plain; charset=utf-8'}
    }
  }

  // Whose text it is, for where it is kept when it cannot be saved.
  place() {
    return `file?page=${this.page}`
  }

  async put(text, query, version) {
    let answer, told
    try {
      answer = await this.ask(this.place() + query, this.request(text, version))
      told = answer.ok || answer.status === 412 ? this.read(await answer.json()) : null
    } catch {
      return {trouble: 'The program does not answer: start courtwright open again. Your text is in this tab: Download keeps it as a file.', silent: true}
    }
    if (answer.status === 404) { // another program has the port
      return {trouble: 'The program of this page has ended. Your text is in this tab: Download keeps it as a file, and the page at the new address asks for it.'}
    }
    if (!told) {
      return {trouble: await trouble(answer)}
    }
    if (answer.status === 412) {
      return {conflict: told}
    }
    this.version = told.version
    return told
  }

  save(text) {
    return this.put(text, '', this.version)
  }

  keepMine(text, theirs) {
    return this.put(text, '&keep=yes', theirs.version)
  }

  saveNow(text) {
    this.ask(this.place(), {...this.request(text, this.version), keepalive: true}).catch(() => {}) // up to 64 kB
    return true
  }

  watch(changed) {
    const look = async () => {
      if (document.visibilityState === 'visible') {
        const known = this.seen
        try {
          const answer = await this.ask('file', {headers: {'If-None-Match': `"${known}"`}})
          if (answer.status === 200 && known === this.seen) {
            changed(this.read(await answer.json()))
          }
        } catch {
          // it will be said when something is to be saved
        }
      }
      setTimeout(look, EVERY)
    }
    setTimeout(look, EVERY)
  }

  async sheet(options, text) {
    const query = new URLSearchParams({sheet: options.sheet, paper: options.paper, reader: String(options.reader)})
    if (options.names) {
      query.append('names', '1')
    }
    options.plays.forEach((play) => query.append('play', play))
    const answer = await this.ask('sheet?' + query, {method: 'POST', body: text})
    if (!answer.ok) {
      throw new Error(await trouble(answer))
    }
    return answer.blob()
  }
}

async function trouble(answer) {
  try {
    return (await answer.json()).message || `The program said ${answer.status}.`
  } catch {
    return `The program said ${answer.status}.`
  }
}

export function storeOf(document, sample) {
  const meta = document.querySelector('meta[name="courtwright-server"]')
  return meta ? new ServerStore(meta.content) : new TabStore(sample)
}
