/* One value that all who work at this device share, in every page and tab: kept, changed, told on. */
(function (Basinside) {
  'use strict';

  const TRIES = 3;

  /**
   * A shared value; never rejects, as the store never does. `change` is kept, `set` is not;
   * `settled` waits until what was changed is kept. Who listens hears where a change came from.
   * @template T
   * @param {string} what its name in the store
   * @param {(text: string | null) => T} read what was kept, as a stranger's text
   * @param {(value: T) => string} write
   */
  Basinside.sharedDraft = async function (what, read, write) {
    const store = await Basinside.store();
    const key = Basinside.storeKey('-', what);
    /** @type {string | null} */
    let seen = await store.get(key);
    let value = read(seen);
    /** @type {((from: string) => void)[]} */
    const hearers = [];
    /** @type {Promise<void>} */
    let turn = Promise.resolve();

    /** @param {string} from */
    const tell = (from) => hearers.forEach((hear) => hear(from));

    /** @param {() => Promise<void>} work */
    function queue(work) {
      turn = turn.then(work).catch((error) => console.warn('not kept: ' + what, error));
    }

    /** @param {T} next @param {string} from */
    function set(next, from) {
      value = next;
      tell(from);
    }

    /** @param {(value: T) => T} to */
    function change(to) {
      set(to(value), 'here');
      queue(async () => {
        // Another tab may have written: what it wrote stays, and the change is made on it again.
        for (let tries = 0; tries < TRIES; tries += 1) {
          const text = write(value);
          if (await store.put(key, text, seen)) {
            seen = text;
            return;
          }
          seen = await store.get(key);
          set(to(read(seen)), 'elsewhere');
        }
      });
    }

    window.addEventListener('focus', () =>
      queue(async () => {
        const text = await store.get(key);
        if (text === seen) return;
        seen = text;
        set(read(text), 'elsewhere');
      })
    );
    return {
      works: store.works,
      value: () => value,
      change,
      set,
      tell,
      listen: (/** @type {(from: string) => void} */ hear) => hearers.push(hear),
      settled: () => turn,
    };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
