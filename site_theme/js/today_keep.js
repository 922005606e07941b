/* The ticks of this shift, shared by all who work at this device: kept, changed, told on. */
(function (Basinside) {
  'use strict';

  const CLOCK_MS = 20 * 1000; // how often the page looks whether the shift is over

  /**
   * The ticks of this device; never rejects, as the store never does. `settled` waits until what
   * was changed is kept.
   * @param {number} hours how long ticks hold
   */
  Basinside.shiftKeeper = async function (hours) {
    const { readKept, keptText, none } = Basinside.shift;
    const store = await Basinside.store();
    const key = Basinside.storeKey('-', 'ticks');
    let seen = await store.get(key);
    let ticks = readKept(seen, Date.now(), hours);
    let day = Basinside.day(new Date());
    /** @type {((from: string) => void)[]} */
    const hearers = [];
    /** @type {Promise<void>} */
    let turn = Promise.resolve();

    /** @param {string} from who changed it: `here`, `elsewhere`; or `clock`, `midnight`, `over` */
    const tell = (from) => hearers.forEach((hear) => hear(from));

    /** @param {(ticks: any) => any} to */
    function keep(to) {
      turn = turn
        .then(async () => {
          // Another tab may have written: its ticks are kept, and the change is made on them again.
          for (let tries = 0; tries < 3; tries += 1) {
            const text = keptText(ticks);
            if (await store.put(key, text, seen)) {
              seen = text;
              return;
            }
            seen = await store.get(key);
            ticks = to(readKept(seen, Date.now(), hours));
            tell('elsewhere');
          }
        })
        .catch((error) => console.warn('ticks were not kept', error));
    }

    /** @param {(ticks: any) => any} to */
    function change(to) {
      ticks = to(ticks);
      tell('here');
      keep(to);
    }

    function look() {
      const now = Date.now();
      const today = Basinside.day(new Date(now));
      if (ticks.set && !readKept(keptText(ticks), now, hours).set) {
        ticks = none();
        tell('over');
      } else {
        tell(today === day ? 'clock' : 'midnight');
      }
      day = today;
    }

    function reread() {
      turn = turn.then(async () => {
        const text = await store.get(key);
        if (text === seen) return;
        seen = text;
        ticks = readKept(text, Date.now(), hours);
        tell('elsewhere');
      });
    }

    window.addEventListener('focus', () => {
      look();
      if (store.works) reread();
    });
    setInterval(look, CLOCK_MS);
    return {
      works: store.works,
      ticks: () => ticks,
      change,
      listen: (/** @type {(from: string) => void} */ hear) => hearers.push(hear),
      settled: () => turn,
    };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
