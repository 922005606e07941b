/* The ticks of this shift, shared by all who work at this device; they end with the shift. */
(function (Basinside) {
  'use strict';

  const CLOCK_MS = 20 * 1000; // how often the page looks whether the shift is over

  /**
   * The ticks of this device; never rejects, as the store never does. Who listens hears `here`,
   * `elsewhere`, `clock`, `midnight` or `over`.
   * @param {number} hours how long ticks hold
   */
  Basinside.shiftKeeper = async function (hours) {
    const { readKept, keptText, none } = Basinside.shift;
    const read = (/** @type {string | null} */ text) => readKept(text, Date.now(), hours);
    const shared = await Basinside.sharedDraft('ticks', read, keptText);
    let day = Basinside.day(new Date());

    function look() {
      const now = new Date();
      const today = Basinside.day(now);
      const ticks = shared.value();
      if (ticks.set && !readKept(keptText(ticks), now.getTime(), hours).set) {
        shared.set(none(), 'over');
      } else {
        shared.tell(today === day ? 'clock' : 'midnight');
      }
      day = today;
    }

    window.addEventListener('focus', look);
    setInterval(look, CLOCK_MS);
    return shared;
  };
})(globalThis.Basinside = globalThis.Basinside || {});
