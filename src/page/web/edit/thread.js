// SPDX-License-Identifier: MIT
// thread: a worker to be asked: ask(what) gives a promise of its answer. latest(what) is for questions at a key: while
// one is on its way only the newest of the others is kept, and those in between are answered null.

export class Thread {
  // module: a promise of it, as text or compiled; questions wait for it
  constructor(source, module) {
    this.worker = new Worker(URL.createObjectURL(new Blob([source], {type: 'text/javascript'})))
    this.waiting = new Map()
    this.next = 1
    this.worker.onmessage = ({data}) => this.take(data)
    this.lent = module.then((lent) => this.post(0, 'start', {module: lent}))
    this.ready = new Promise((good, bad) => this.waiting.set(0, {good, bad}))
  }

  take({id, answer, trouble}) {
    const {good, bad} = this.waiting.get(id)
    this.waiting.delete(id)
    if (trouble === undefined) {
      good(answer)
    } else {
      bad(new Error(trouble))
    }
  }

  ask(ask, what = {}) {
    const id = this.next++
    this.lent.then(() => this.post(id, ask, what))
    return new Promise((good, bad) => this.waiting.set(id, {good, bad}))
  }

  post(id, ask, what) {
    this.worker.postMessage({id, ask, ...what})
  }

  async latest(ask, what) {
    if (this.busy) {
      this.pending?.good(null)
      return new Promise((good, bad) => {
        this.pending = {ask, what, good, bad}
      })
    }
    this.busy = true
    try {
      return await this.ask(ask, what)
    } finally {
      this.busy = false
      const pending = this.pending
      this.pending = null
      if (pending) {
        this.latest(pending.ask, pending.what).then(pending.good, pending.bad)
      }
    }
  }
}
