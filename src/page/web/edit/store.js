// SPDX-License-Identifier: MIT
// store: where the page's text lives. Two stores with one face:
//
//   store.kind                 'tab' | 'server'
//   await store.open()         {name, text, version, includes: {name: text}}
//   await store.save(text)     {version} | {conflict: {text, version}} | {trouble: 'in words'}
//   await store.keepMine(text) as save, and what lies there now is kept beside it: {version, kept: 'name'}
//   store.watch(changed)       calls changed({text, version}) when it was changed elsewhere
//   await store.sheet(options, text)   a PDF as a Blob, or null: this store makes none
//
// The tab's is the browser's own storage (nothing leaves the machine). The server's is `courtwright open FILE`.
//
// ---- What the page and the server have agreed on ----
//
// The server gives out the same file as `courtwright open --offline`, with two changes, both found once in it:
//   <!--courtwright-server-->   becomes   <meta name="courtwright-server" content="TOKEN">
//   connect-src 'none'          becomes   connect-src 'self'
// (that one in the meta element of the policy; a policy in a header must allow the same as the meta does).
// All addresses begin with /TOKEN/, the page's own is /TOKEN/ itself. Every request comes from the page's own
// origin, with fetch, mode same-origin, no cookies. Texts are UTF-8. A version is a string of letters, digits and
// hyphens that differs whenever the bytes on disk do; it travels in quotes, as an ETag.
//
//   GET  /TOKEN/file        200, application/json:
//                           {"name": "kites.play", "text": "…", "version": "…",
//                            "includes": [{"name": "motion.play", "text": "…"}]}  (names as written in include)
//        If-None-Match: "V" 304 while the version is still V. The page asks every two seconds while it is seen.
//   PUT  /TOKEN/file        the body is the text, text/plain; written beside and renamed.
//        If-Match: "V"      the version the page knew.
//                           200 {"version": "…"}          saved
//                           412 {"text": "…", "version": "…"}   it was changed meanwhile; nothing was written
//        ?keep=yes          with If-Match of that newer version: what is on disk is first kept beside it under a
//                           name of the server's choice: 200 {"version": "…", "kept": "kites before 18.42.play"}
//   POST /TOKEN/sheet?sheet=handout&paper=letter&reader=3&play=Lantern
//                           the body is the text as it stands in the page. sheet: handout, coach, fill-in, card,
//                           practice, chart, trend, book; paper: letter, a4; reader 0..5 (0: everybody's);
//                           play: may come more than once; none: all.
//                           200 application/pdf; 422 {"message": "why not, in words"}
//   anything else           404. Trouble of any kind: a status of 400 or more, with {"message": "in words"} where
//                           there is something to say; 429 when asked too often, 413 when the text is too large.

const DRAFTS = 'courtwright'
const EVERY = 2000 // ms between two looks at the file

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
    this.sample = sample
    this.name = sample.name
    this.includes = {}
  }

  // What was last written here; of the two copies the later one.
  async open() {
    const found = [this.quick(), await this.slow()].filter(Boolean).sort((a, b) => b.at - a.at)[0]
    if (found) {
      this.name = found.name
      this.includes = found.includes || {}
    }
    return {name: this.name, text: found ? found.text : this.sample.text, version: '', includes: this.includes}
  }

  quick() {
    try {
      return JSON.parse(localStorage.getItem(DRAFTS))
    } catch {
      return null // no storage here, or none of ours
    }
  }

  async slow() {
    try {
      this.db = await database()
      return await wish(this.db.transaction('drafts').objectStore('drafts').get('open'))
    } catch {
      return null
    }
  }

  draft(text) {
    return {id: 'open', name: this.name, text, includes: this.includes, at: Date.now()}
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

  keepMine(text) {
    return this.save(text)
  }

  watch() {}

  async sheet() {
    return null
  }
}

// ---- the server's ----

export class ServerStore {
  constructor(token) {
    this.kind = 'server'
    this.base = `/${token}/`
    this.version = ''
  }

  async ask(path, options = {}) {
    return fetch(this.base + path, {mode: 'same-origin', credentials: 'omit', cache: 'no-store', ...options})
  }

  take(told) {
    this.version = told.version
    return told
  }

  async open() {
    const answer = await this.ask('file')
    if (!answer.ok) {
      throw new Error(await trouble(answer))
    }
    const told = this.take(await answer.json())
    const includes = Object.fromEntries(told.includes.map((file) => [file.name, file.text]))
    this.name = told.name
    return {name: told.name, text: told.text, version: told.version, includes}
  }

  async put(text, query) {
    try {
      const answer = await this.ask('file' + query, {
        method: 'PUT',
        body: text,
        headers: {'If-Match': `"${this.version}"`, 'Content-Type': 'text/plain; charset=utf-8'}
      })
      if (answer.status === 412) {
        return {conflict: this.take(await answer.json())}
      }
      return answer.ok ? this.take(await answer.json()) : {trouble: await trouble(answer)}
    } catch {
      return {trouble: 'The program does not answer: start courtwright open again. Your text is kept in this tab.'}
    }
  }

  save(text) {
    return this.put(text, '')
  }

  saveNow() {
    return false
  }

  keepMine(text) {
    return this.put(text, '?keep=yes')
  }

  watch(changed) {
    const look = async () => {
      if (document.visibilityState === 'visible') {
        const known = this.version
        try {
          const answer = await this.ask('file', {headers: {'If-None-Match': `"${known}"`}})
          if (answer.status === 200 && known === this.version) {
            changed(this.take(await answer.json()))
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
