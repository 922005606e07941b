/* The script of store.html, and the only one there: keeps drafts in IndexedDB for the page that
   framed it. It stands alone (assets/store.js), because the bundle stops in a frame. Any page on
   this computer can frame it, so what lies here is only drafts, and nobody believes it unread. */
(function () {
  'use strict';

  const PROTOCOL = 'basinside/store/1';
  // hb:HANDBOOK:EDITION:STAFF-CODE:WHAT; a hyphen stands where no person is meant.
  const KEY = /^hb:[a-z0-9-]{1,80}:[0-9]{4}\.[1-9][0-9]{0,3}:([A-Z]{1,3}-[0-9]{2,4}|-):[a-z0-9:-]{1,120}$/;
  const PREFIX = /^hb:[a-z0-9-]{1,80}:([0-9]{4}\.[1-9][0-9]{0,3}:([A-Z]{1,3}-[0-9]{2,4}|-):)$/;
  const LONGEST = 1_000_000; // letters of one draft (our own cap)
  const NAME = 'basinside';
  const SHELF = 'drafts';

  if (window.parent === window) return;

  /** @type {Promise<IDBDatabase> | null} */
  let opened = null;

  function open() {
    if (opened === null) {
      opened = new Promise((resolve, reject) => {
        const asked = indexedDB.open(NAME, 1);
        asked.onupgradeneeded = () => asked.result.createObjectStore(SHELF);
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = () => reject(asked.error);
        asked.onblocked = () => reject(new Error('blocked'));
      });
    }
    return opened;
  }

  /**
   * Run one transaction, on the disk before it is reported (strict durability).
   * @param {IDBTransactionMode} mode
   * @param {(shelf: IDBObjectStore, give: (value: any) => void) => void} work
   * @returns {Promise<any>}
   */
  async function within(mode, work) {
    const base = await open();
    return new Promise((resolve, reject) => {
      /** @type {any} */
      let given;
      const deal = base.transaction(SHELF, mode, { durability: 'strict' });
      deal.oncomplete = () => resolve(given);
      deal.onabort = () => reject(deal.error);
      work(deal.objectStore(SHELF), (value) => { given = value; });
    });
  }

  /** @param {IDBObjectStore} shelf @param {string} key @param {(value: any) => void} use */
  function read(shelf, key, use) {
    const asked = shelf.get(key);
    asked.onsuccess = () => use(asked.result === undefined ? null : asked.result);
  }

  /** @type {Record<string, (asked: any) => Promise<any>>} */
  const DEEDS = {
    hello: async () => true,

    get: ({ key }) => within('readonly', (shelf, give) => read(shelf, key, give)),

    // Writes only over what the asker last saw (`was`): a second tab does not lose its answers.
    put: ({ key, value, was }) =>
      within('readwrite', (shelf, give) =>
        read(shelf, key, (found) => {
          give(found === was);
          if (found === was) shelf.put(value, key);
        })
      ),

    clear: ({ key }) =>
      within('readwrite', (shelf) => {
        shelf.delete(IDBKeyRange.bound(key, key + '\uffff'));
      }),
  };

  /** @param {any} asked */
  function allowed(asked) {
    const { deed, key, value, was } = asked;
    if (deed === 'hello') return true;
    if (typeof key !== 'string') return false;
    if (deed === 'clear') return PREFIX.test(key);
    if (!KEY.test(key)) return false;
    if (deed === 'get') return true;
    const text = typeof value === 'string' && value.length <= LONGEST;
    return deed === 'put' && text && (was === null || typeof was === 'string');
  }

  window.addEventListener('message', async (event) => {
    const asked = event.data;
    if (event.source !== window.parent || !asked || asked.protocol !== PROTOCOL) return;
    /** @type {(reply: any) => void} */
    const answer = (reply) => {
      // Pages from disk have no origin that could be named here.
      window.parent.postMessage({ protocol: PROTOCOL, id: asked.id, ...reply }, '*');
    };
    const deed = DEEDS[asked.deed];
    if (!deed || !allowed(asked)) return answer({ ok: false });
    try {
      answer({ ok: true, value: await deed(asked) });
    } catch (error) {
      console.warn('store', error);
      answer({ ok: false });
    }
  });
})();
