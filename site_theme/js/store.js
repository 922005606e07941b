/* The page's side of the store frame. Without one, or where the browser blocks it, drafts stay in
   memory and the page says so. What is read back is a stranger's text until it was looked at. */
(function (Basinside) {
  'use strict';

  const PROTOCOL = 'basinside/store/1';
  const PATIENCE_MS = 5000; // for a slow stick; the page works meanwhile
  const DRAWN_MS = 200; // a page that is not shown draws nothing
  const GREETING_MS = 1500; // a loaded frame answers at once, or holds no script of ours

  /**
   * `works` tells whether drafts outlive the page. `put` writes only over `was`, the text last seen
   * (null for none), and gives false when another tab wrote since.
   * @typedef {{works: boolean, get: (key: string) => Promise<string | null>,
   *   put: (key: string, value: string, was: string | null) => Promise<boolean>,
   *   clear: (prefix: string) => Promise<void>}} Store
   */

  /**
   * @template T
   * @param {Promise<T>} promise
   * @param {number} [patience] milliseconds
   * @returns {Promise<T>}
   */
  function soon(promise, patience) {
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => reject(new Error('no answer')), patience || PATIENCE_MS);
      promise.then(resolve, reject).finally(() => clearTimeout(late));
    });
  }

  /** @returns {Store} */
  function inMemory() {
    /** @type {Map<string, string>} */
    const kept = new Map();
    return {
      works: false,
      get: async (key) => kept.get(key) ?? null,
      put: async (key, value) => {
        kept.set(key, value);
        return true;
      },
      clear: async (prefix) => {
        for (const key of [...kept.keys()]) if (key.startsWith(prefix)) kept.delete(key);
      },
    };
  }

  /**
   * @param {HTMLIFrameElement} frame
   * @returns {(asked: Record<string, unknown>) => Promise<any>}
   */
  function speaker(frame) {
    /** @type {Map<number, {resolve: (value: any) => void, reject: (error: Error) => void}>} */
    const waiting = new Map();
    let last = 0;
    window.addEventListener('message', (event) => {
      const reply = event.data;
      if (event.source !== frame.contentWindow || !reply || reply.protocol !== PROTOCOL) return;
      const asker = waiting.get(reply.id);
      if (!asker) return;
      waiting.delete(reply.id);
      if (reply.ok) asker.resolve(reply.value);
      else asker.reject(new Error('store refused'));
    });
    return (asked) =>
      soon(
        new Promise((resolve, reject) => {
          last += 1;
          waiting.set(last, { resolve, reject });
          frame.contentWindow?.postMessage({ protocol: PROTOCOL, id: last, ...asked }, '*');
        })
      );
  }

  /** @returns {Promise<void>} when the page has drawn what it shows, or need not */
  function drawn() {
    return new Promise((resolve) => {
      setTimeout(resolve, DRAWN_MS);
      requestAnimationFrame(() => setTimeout(resolve));
    });
  }

  /**
   * @param {string} address
   * @returns {Promise<Store>}
   */
  async function inFrame(address) {
    await drawn(); // a frame is a page more to load, and nobody waits for what was kept
    const frame = Basinside.make('iframe', { hidden: true, 'aria-hidden': 'true', tabindex: -1 });
    const ready = new Promise((resolve) => frame.addEventListener('load', resolve));
    const ask = speaker(frame);
    frame.src = address;
    document.body.append(frame);
    await soon(ready);
    await soon(ask({ deed: 'hello' }), GREETING_MS);
    const store = {
      works: true,
      get: async (/** @type {string} */ key) => {
        const value = await ask({ deed: 'get', key });
        return typeof value === 'string' ? value : null;
      },
      put: async (
        /** @type {string} */ key, /** @type {string} */ value, /** @type {string | null} */ was
      ) => Boolean(await ask({ deed: 'put', key, value, was })),
      clear: async (/** @type {string} */ prefix) => {
        await ask({ deed: 'clear', key: prefix });
      },
    };
    const probe = Basinside.storeKey('-', 'probe');
    const was = await store.get(probe);
    const token = String(Date.now());
    await store.put(probe, token, was);
    if ((await store.get(probe)) === null) throw new Error('nothing kept');
    return store;
  }

  /** @type {Promise<Store> | null} */
  let known = null;

  /**
   * The store of this page; never rejects.
   * @returns {Promise<Store>}
   */
  Basinside.store = function () {
    if (known === null) {
      const { store: address } = Basinside.page();
      const made = address ? inFrame(address) : Promise.reject(new Error('no store frame'));
      known = made.catch((error) => {
        console.warn('drafts stay in memory', error);
        return inMemory();
      });
    }
    return known;
  };

  /**
   * The key of a draft; a hyphen for `staffCode` where no person is meant.
   * @param {string} staffCode
   * @param {string} what
   * @returns {string}
   */
  Basinside.storeKey = function (staffCode, what) {
    const { handbook, edition } = Basinside.page();
    return `hb:${handbook}:${edition}:${staffCode}:${what}`;
  };
})(globalThis.Basinside = globalThis.Basinside || {});
