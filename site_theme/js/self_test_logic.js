/* The sheet of one self-test: what was answered, in which shuffled order. Values in, values out. */
(function (Basinside) {
  'use strict';

  const DRAFT = 'basinside/draft/1';
  const ATTEMPT = 'basinside/attempt/1';
  const LONGEST_SECONDS = 86400; // the attempt format's own bound
  const MOST_CHANGES = 10000;

  /**
   * A whole number below `limit`, each as likely.
   * @param {number} limit
   * @returns {number}
   */
  function drawn(limit) {
    const fair = Math.floor(2 ** 32 / limit) * limit;
    const box = new Uint32Array(1);
    do crypto.getRandomValues(box);
    while ((box[0] || 0) >= fair);
    return (box[0] || 0) % limit;
  }

  /**
   * The numbers below `length` in a drawn order.
   * @param {number} length
   * @param {(limit: number) => number} [draw]
   * @returns {number[]}
   */
  function shuffled(length, draw) {
    const order = Array.from({ length }, (_, n) => n);
    for (let last = length - 1; last > 0; last -= 1) {
      const other = (draw || drawn)(last + 1);
      [order[last], order[other]] = [order[other] ?? 0, order[last] ?? 0];
    }
    return order;
  }

  /** @param {Item} item @returns {ItemAnswer} */
  function blank(item) {
    const order = shuffled(item.options.length);
    return { item: item.item, order, chosen: [], checked: false, seconds: 0, changes: 0 };
  }

  /** @param {Item[]} items @returns {Sheet} */
  function fresh(items) {
    return { at: 0, answers: items.map(blank) };
  }

  /**
   * The sheet with one answer changed.
   * @param {Sheet} sheet @param {number} index @param {Partial<ItemAnswer>} change
   * @returns {Sheet}
   */
  function withAnswer(sheet, index, change) {
    const answers = sheet.answers.map((each, n) => (n === index ? { ...each, ...change } : each));
    return { ...sheet, answers };
  }

  /**
   * The sheet with what was kept earlier wherever nothing is answered on it.
   * @param {Sheet} sheet @param {Sheet} kept
   * @returns {Sheet}
   */
  function merged(sheet, kept) {
    const begun = sheet.answers.some((each) => each.chosen.length);
    const answers = sheet.answers.map((each, n) =>
      each.chosen.length ? each : /** @type {ItemAnswer} */ (kept.answers[n])
    );
    return { at: begun ? sheet.at : kept.at, answers };
  }

  /**
   * Whether several options may be ticked.
   * @param {Item} item
   * @returns {boolean}
   */
  function takesMany(item) {
    return item.kind === 'multiple' || item.options.filter((each) => each.right).length > 1;
  }

  /**
   * The sheet after options were ticked; taking a choice back is a change of mind.
   * @param {Sheet} sheet @param {number} index @param {number[]} chosen positions as shown
   * @returns {Sheet}
   */
  function choose(sheet, index, chosen) {
    const before = sheet.answers[index];
    if (!before || before.checked) return sheet;
    const takenBack = before.chosen.some((p) => !chosen.includes(p));
    const changes = Math.min(before.changes + (takenBack ? 1 : 0), MOST_CHANGES);
    return withAnswer(sheet, index, { chosen: [...chosen].sort((a, b) => a - b), changes });
  }

  /**
   * @param {Sheet} sheet @param {number} index @param {number} seconds
   * @returns {Sheet}
   */
  function spend(sheet, index, seconds) {
    const before = sheet.answers[index]?.seconds || 0;
    const sum = Math.min(before + Math.max(0, Math.round(seconds)), LONGEST_SECONDS);
    return withAnswer(sheet, index, { seconds: sum });
  }

  /**
   * What an answer is worth by the item's plan, which counts in authored positions.
   * @param {Item} item @param {ItemAnswer} answer
   */
  function outcome(item, answer) {
    const chosen = answer.chosen.map((p) => answer.order[p] ?? -1).sort((a, b) => a - b);
    return Basinside.marking.evaluate(item.plan, { chosen });
  }

  /**
   * How an item went, in a word that names a phrase.
   * @param {Item} item @param {ItemAnswer} answer
   * @returns {'unsafe' | 'safety' | 'wrong' | 'open' | 'right'}
   */
  function standing(item, answer) {
    if (!answer.chosen.length) return 'open';
    const { passed, unsafe } = outcome(item, answer);
    if (unsafe.length) return 'unsafe';
    if (passed) return 'right';
    return item.critical ? 'safety' : 'wrong';
  }

  const URGENCY = ['unsafe', 'safety', 'wrong', 'open'];

  /**
   * What to repeat, the most dangerous first.
   * @param {Item[]} items @param {Sheet} sheet
   * @returns {{index: number, why: string}[]}
   */
  function toRepeat(items, sheet) {
    return items
      .map((item, index) => ({ index, why: standing(item, /** @type {ItemAnswer} */ (sheet.answers[index])) }))
      .filter(({ why }) => why !== 'right')
      .sort((a, b) => URGENCY.indexOf(a.why) - URGENCY.indexOf(b.why) || a.index - b.index);
  }

  /**
   * The attempt file: answers, never scores.
   * @param {{handbook: string, edition: string, language: string}} page
   * @param {string} topic @param {string} staffCode @param {string} date @param {Sheet} sheet
   * @returns {string}
   */
  function attemptText(page, topic, staffCode, date, sheet) {
    const items = sheet.answers.map(({ item, order, chosen, seconds, changes }) =>
      chosen.length ? { item, order, chosen, seconds, changes } : { item, order, seconds, changes }
    );
    const attempt = {
      format: ATTEMPT, handbook: page.handbook, edition: page.edition, kind: 'self-test',
      id: topic, staff_code: staffCode, date, language: page.language, items,
    };
    return JSON.stringify(attempt, null, 1) + '\n';
  }

  /** @param {string} topic @param {Sheet} sheet */
  function draftText(topic, sheet) {
    return JSON.stringify({ format: DRAFT, topic, at: sheet.at, items: sheet.answers });
  }

  /** @param {unknown} value @param {number} most @returns {boolean} */
  function isCount(value, most) {
    return Number.isInteger(value) && Number(value) >= 0 && Number(value) <= most;
  }

  /** @param {any} found @param {Item} item @returns {boolean} */
  function isAnswer(found, item) {
    const { options } = item;
    const { order, chosen } = found;
    if (!Array.isArray(order) || order.length !== options.length || !Array.isArray(chosen)) return false;
    return (
      options.every((_, p) => order.includes(p)) &&
      chosen.every((p, n) => isCount(p, options.length - 1) && (n === 0 || p > chosen[n - 1])) &&
      (takesMany(item) || chosen.length < 2) &&
      (typeof found.checked === 'boolean' && (chosen.length > 0 || !found.checked)) &&
      isCount(found.seconds, LONGEST_SECONDS) && isCount(found.changes, MOST_CHANGES)
    );
  }

  /**
   * The sheet that a kept text holds, or null: any page on this computer could have written it.
   * An item that is unknown or does not fit starts blank.
   * @param {string} text @param {string} topic @param {Item[]} items
   * @returns {Sheet | null}
   */
  function readDraft(text, topic, items) {
    let found;
    try {
      found = /** @type {any} */ (Basinside.readJson(text));
    } catch (error) {
      if (error instanceof Basinside.JsonTextError) return null;
      throw error;
    }
    if (!found || found.format !== DRAFT || found.topic !== topic) return null;
    if (!Array.isArray(found.items)) return null;
    const answers = items.map((item) => {
      const own = found.items.find((/** @type {any} */ each) => each && each.item === item.item);
      if (!own || !isAnswer(own, item)) return blank(item);
      const { order, chosen, checked, seconds, changes } = own;
      return { item: item.item, order, chosen, checked, seconds, changes };
    });
    return { at: isCount(found.at, items.length - 1) ? found.at : 0, answers };
  }

  Basinside.selfTest = Object.freeze({
    shuffled, fresh, merged, takesMany, withAnswer, choose, spend, outcome, standing, toRepeat,
    attemptText, draftText, readDraft,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
