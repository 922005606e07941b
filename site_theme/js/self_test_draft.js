/* Keeps the sheet of a self-test for a staff code, and says how that went. */
(function (Basinside) {
  'use strict';

  /**
   * @typedef {{who: string, seen: string | null, lost: boolean}} Session
   *   `seen` is the text last read or written, so that a second tab shows; `lost` says that it did
   */

  /**
   * @param {string} topic
   * @param {Item[]} items
   * @param {{adopt: (kept: Sheet) => void, told: (key: string, code: string) => void}} page
   *   `adopt` takes over what was kept; `told` hears how keeping went
   */
  Basinside.selfTestDraft = function (topic, items, page) {
    const { draft, readDraft } = Basinside.sheetText;
    /** @type {Session | null} */
    let session = null;
    /** @type {Promise<void>} */
    let turn = Promise.resolve();

    /** @param {Session} own @param {() => Promise<void>} work */
    const queue = (own, work) => {
      turn = turn.then(work).catch((error) => {
        console.warn('a draft was not kept', error);
        page.told('self-test.not-kept', own.who);
      });
    };
    const key = (/** @type {Session} */ own) => Basinside.storeKey(own.who, `self-test:${topic}`);

    /**
     * Write the sheet for the person who is learning; nothing happens before one is.
     * @param {Sheet} sheet
     */
    const keep = (sheet) => {
      const own = session;
      if (own === null) return;
      queue(own, async () => {
        const store = await Basinside.store();
        const text = draft(topic, sheet);
        if (own.lost || text === own.seen) return;
        own.lost = !(await store.put(key(own), text, own.seen));
        if (own.lost) return page.told('self-test.elsewhere', own.who);
        if (!store.works) return page.told('self-test.not-kept', own.who);
        own.seen = text;
        page.told('self-test.kept', own.who);
      });
    };

    /**
     * Begin with a person, or with nobody: what is kept for them is given to `adopt`.
     * @param {string | null} who
     */
    const open = (who) => {
      const own = who === null ? null : { who, seen: null, lost: false };
      session = own;
      if (own === null) return;
      queue(own, async () => {
        const store = await Basinside.store();
        const text = await store.get(key(own));
        own.seen = text;
        const kept = text === null ? null : readDraft(text, topic, items);
        if (kept !== null && session === own) page.adopt(kept);
        if (!store.works) page.told('self-test.not-kept', own.who);
      });
    };

    /**
     * Whether this sheet outlives the page.
     * @param {Sheet} sheet
     */
    const isKept = (sheet) =>
      session !== null && !session.lost && session.seen === draft(topic, sheet);

    return { keep, open, isKept };
  };
})(globalThis.Basinside = globalThis.Basinside || {});
