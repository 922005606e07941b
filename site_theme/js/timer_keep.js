/* The times that run on this device, shared by all who work at it: kept, changed, told on. */
(function (Basinside) {
  'use strict';

  /** @type {Promise<any> | null} */
  let known = null;

  /**
   * @typedef {{all: () => any[], works: boolean, change: (to: (timers: any[]) => any[]) => void,
   *   listen: (hear: () => void) => void, settled: () => Promise<void>}} Keeper
   *   `settled` waits until what was changed is kept
   */

  /** @returns {Promise<Keeper>} */
  async function begin() {
    const { readKept, keptText } = Basinside.timing;
    const store = await Basinside.store();
    const key = Basinside.storeKey('-', 'timers');
    let seen = await store.get(key);
    let timers = readKept(seen, Date.now());
    /** @type {(() => void)[]} */
    const hearers = [];
    /** @type {Promise<void>} */
    let turn = Promise.resolve();

    const tell = () => hearers.forEach((hear) => hear());

    /** @param {(timers: any[]) => any[]} to */
    function change(to) {
      timers = to(timers);
      tell();
      turn = turn
        .then(async () => {
          // Another tab may have written: its times are kept, and the change is made on them again.
          for (let tries = 0; tries < 3; tries += 1) {
            const text = keptText(timers);
            if (await store.put(key, text, seen)) {
              seen = text;
              return;
            }
            seen = await store.get(key);
            timers = to(readKept(seen, Date.now()));
            tell();
          }
        })
        .catch((error) => console.warn('a time was not kept', error));
    }

    window.addEventListener('focus', () => {
      turn = turn.then(async () => {
        const text = await store.get(key);
        if (text === seen) return;
        seen = text;
        timers = readKept(text, Date.now());
        tell();
      });
    });
    return {
      works: store.works,
      all: () => timers,
      change,
      listen: (hear) => hearers.push(hear),
      settled: () => turn,
    };
  }

  /** The times of this device; never rejects, as the store never does. */
  Basinside.timers = function () {
    known = known || begin();
    return known;
  };
})(globalThis.Basinside = globalThis.Basinside || {});
