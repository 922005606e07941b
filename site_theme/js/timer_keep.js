/* The times that run on this device, shared by all who work at it. */
(function (Basinside) {
  'use strict';

  /** @type {Promise<any> | null} */
  let known = null;

  /** The times of this device; never rejects, as the store never does. */
  Basinside.timers = function () {
    const { readKept, keptText } = Basinside.timing;
    known =
      known ||
      Basinside.sharedDraft(
        'timers',
        (/** @type {string | null} */ text) => readKept(text, Date.now()),
        keptText
      );
    return known;
  };
})(globalThis.Basinside = globalThis.Basinside || {});
