// What was entered and the server does not have yet. It is written to the browser's own database before anything is sent, and leaves it
// only once the server has stored it: a killed tab, a lost network or a server that starts anew loses nothing. Every item has an id made here, so that
// sending it twice stores it once.
const NAME = 'parfield-measure';
const MOST_AT_ONCE = 50;
const FIRST_PAUSE = 1000;
const LONGEST_PAUSE = 10000;
const LEASE = 20000;
const TIMEOUT = 15000;

/** A new id; crypto.randomUUID is there only on a secure address, which a phone in the same room has not. */
export function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

function promised(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function finished(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
    transaction.onerror = () => reject(transaction.error);
  });
}

export class Queue {
  /** onChange() after the items changed; onSaved(readings, base) when the server stored some; onState({away, problem}). */
  constructor({ onChange, onSaved, onState }) {
    this.onChange = onChange;
    this.onSaved = onSaved;
    this.onState = onState;
    this.holder = newId();
    this.pause = FIRST_PAUSE;
    this.running = false;
    this.again = false;
    this.single = false;
    this.revisions = new Map();
  }

  async open() {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore('items', { keyPath: 'n', autoIncrement: true });
      request.result.createObjectStore('pages', { keyPath: 'base' });
      request.result.createObjectStore('lease', { keyPath: 'name' });
    };
    this.db = await promised(request);
    this.db.onversionchange = () => this.db.close();
    if ('BroadcastChannel' in window) {
      this.channel = new BroadcastChannel(NAME);
      this.channel.onmessage = event => {
        if (event.data.saved) this.onSaved(event.data.saved, event.data.base);
        this.onChange();
      };
    }
    navigator.storage?.persist?.().catch(() => false);
    window.addEventListener('online', () => this.send());
    document.addEventListener('visibilitychange', () => {
      if (!document.hidden) this.send();
    });
    return this;
  }

  async items() {
    return promised(this.db.transaction('items').objectStore('items').getAll());
  }

  /**
   * Puts items in the queue, all or none, and resolves once they are on the disk. A write follows the revision that its reading will have when the
   * earlier writes of the queue are stored: those of this page, and those of others that the person had seen (up to item.seen; all, if that is not said).
   */
  async add(items) {
    const transaction = this.db.transaction('items', 'readwrite', { durability: 'strict' });
    const done = finished(transaction);
    const store = transaction.objectStore('items');
    const all = await promised(store.getAll());
    for (const item of items) {
      if (item.type === 'write') {
        const before = all.filter(other => other.type === 'write' && other.reading === item.reading && other.state === 'waiting'
          && (other.tab === this.holder || item.seen === undefined || other.n <= item.seen));
        item.basedOn = Math.max(item.known || 0, this.revisions.get(item.reading) || 0, ...before.map(other => other.basedOn + 1));
      }
      item.state = 'waiting';
      item.tab = this.holder;
      store.add(item);
      all.push(item);
    }
    await done;
    this.tell();
    this.send();
  }

  /** Keeps items that are not sent until a person decides on them; one that is kept already is not kept twice. */
  async putAside(items) {
    const transaction = this.db.transaction('items', 'readwrite', { durability: 'strict' });
    const done = finished(transaction);
    const store = transaction.objectStore('items');
    const all = await promised(store.getAll());
    for (const item of items) {
      if (!all.some(other => other.reading === item.reading && other.value === item.value)) store.add({ ...item, state: 'refused', tab: this.holder });
    }
    await done;
    this.revisions.clear();
    this.tell();
  }

  /** Takes items out: a person decided on them. */
  async remove(numbers) {
    const transaction = this.db.transaction('items', 'readwrite');
    const done = finished(transaction);
    for (const n of numbers) transaction.objectStore('items').delete(n);
    await done;
    this.tell();
  }

  /** The last known page of a survey, for when the server is away. */
  async keepPage(base, data) {
    const transaction = this.db.transaction('pages', 'readwrite');
    transaction.objectStore('pages').put({ base, data });
    return finished(transaction);
  }

  async page(base) {
    return (await promised(this.db.transaction('pages').objectStore('pages').get(base)))?.data;
  }

  tell(saved, base) {
    this.channel?.postMessage({ saved, base });
    if (saved) this.onSaved(saved, base);
    this.onChange();
  }

  /** Sends what waits, in order; begun again while it runs, it looks once more. */
  async send() {
    clearTimeout(this.timer);
    if (this.running) {
      this.again = true;
      return;
    }
    this.running = true;
    try {
      do {
        this.again = false;
        await this.alone(() => this.drain());
      } while (this.again);
    } finally {
      this.running = false;
    }
  }

  /** One tab sends at a time, so that the order holds; where the browser has no locks, by a lease in the database. */
  async alone(work) {
    if (navigator.locks) {
      return navigator.locks.request(NAME, work);
    }
    if (!(await this.lease())) {
      this.later(LEASE / 4);
      return undefined;
    }
    try {
      return await work();
    } finally {
      await this.lease(true);
    }
  }

  async lease(giveUp = false) {
    const transaction = this.db.transaction('lease', 'readwrite');
    const done = finished(transaction);
    const store = transaction.objectStore('lease');
    const held = await promised(store.get('send'));
    const free = !held || held.holder === this.holder || held.until < Date.now();
    if (free) store.put({ name: 'send', holder: this.holder, until: giveUp ? 0 : Date.now() + LEASE });
    await done;
    return free;
  }

  later(pause) {
    clearTimeout(this.timer);
    this.due = Date.now() + pause;
    this.timer = setTimeout(() => this.send(), pause);
  }

  batch(items) {
    const first = items[0];
    const batch = [];
    for (const item of items) {
      if (item.base !== first.base) continue;
      if (item.type !== first.type || (first.group || '') !== (item.group || '')) break;
      batch.push(item);
      if (first.type !== 'write' || (this.single && !first.group) || (!first.group && batch.length === MOST_AT_ONCE)) break;
    }
    return batch;
  }

  async drain() {
    for (;;) {
      const waiting = (await this.items()).filter(item => item.state === 'waiting');
      if (waiting.length === 0) {
        this.single = false;
        this.onState({ away: false });
        return;
      }
      const batch = this.batch(waiting);
      let response;
      let answer;
      try {
        response = await this.post(batch);
        answer = await response.json().catch(() => ({}));
      } catch {
        this.away('');
        return;
      }
      if (response.status >= 500 || response.status === 429 || response.status === 408) {
        this.away(answer.title ? [answer.title, ...(answer.hints || []).map(hint => hint.message)].join('. ') : '');
        return;
      }
      if (response.status === 401 || response.status === 403) {
        this.away(answer.title || 'This browser is no longer let in: pair it again from the laptop. What you entered is kept here.');
        return;
      }
      this.pause = FIRST_PAUSE;
      this.due = 0;
      this.onState({ away: false });
      if (batch[0].type !== 'write') {
        await this.settle(batch, response.ok ? batch.map(item => ({ id: item.id, state: 'saved' })) : null, answer);
        if (response.ok) this.tell(answer.readings || [], batch[0].base);
        continue;
      }
      if (!answer.results && batch.length > 1 && !batch[0].group) {
        this.single = true;
        continue;
      }
      await this.settle(batch, answer.results, answer);
    }
  }

  async post(batch) {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), TIMEOUT);
    const { base, type } = batch[0];
    try {
      return await fetch(type === 'write' ? `${base}/readings` : `${base}/${type}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', Accept: 'application/json' },
        body: JSON.stringify(type === 'write' ? { writes: batch, together: Boolean(batch[0].group) } : { id: batch[0].id, after: batch[0].after, known: batch[0].known }),
        signal: stop.signal,
      });
    } finally {
      clearTimeout(timer);
    }
  }

  away(problem) {
    this.onState({ away: true, problem });
    // Whoever goes on entering while the server is away tries in between: that makes no pause longer.
    if (!this.due || Date.now() >= this.due) this.pause = this.due ? Math.min(LONGEST_PAUSE, this.pause * 2) : FIRST_PAUSE;
    this.later(this.pause);
  }

  /** Stores what became of a batch: saved items leave, the others wait for a person. */
  async settle(batch, results, answer) {
    // Known before the items leave the database, so that a correction typed right now follows the stored revision.
    const own = new Set(batch.filter(item => item.tab === this.holder).map(item => item.id));
    for (const result of results || []) {
      if (result.state === 'saved' && result.reading && own.has(result.id)) this.revisions.set(result.reading.reading, result.reading.revision);
    }
    const transaction = this.db.transaction('items', 'readwrite', { durability: 'strict' });
    const done = finished(transaction);
    const store = transaction.objectStore('items');
    const saved = [];
    const byId = new Map((results || []).map(result => [result.id, result]));
    for (const item of batch) {
      const result = byId.get(item.id) || {
        state: 'refused',
        problem: [answer.title || 'the server refused it', ...(answer.hints || []).map(hint => hint.message)].join('. '),
      };
      if (result.reading) saved.push(result.reading);
      const same = result.state === 'conflict' && result.reading && !item.withdrawn && result.reading.value === item.value && result.reading.kept === item.kept;
      if (result.state === 'saved' || same) {
        store.delete(item.n);
      } else {
        store.put({ ...item, state: result.state, problem: result.problem || '', current: result.reading || null });
      }
    }
    await done;
    this.tell(saved, batch[0].base);
  }
}
