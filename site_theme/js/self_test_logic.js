/* The sheet of one self-test: what was answered, in which shuffled order. Values in, values out. */
(function (Basinside) {
  'use strict';

  const LONGEST_SECONDS = 86400; // the attempt format's own bounds
  const MOST_CHANGES = 10000;

  const box = new Uint32Array(512); // asking for many numbers at once is no slower than for one
  let left = 0;

  /** @returns {number} a number of 32 bits, each as likely, and each given once */
  function bits() {
    if (left === 0) left = crypto.getRandomValues(box).length;
    left -= 1;
    return box[left] || 0;
  }

  /**
   * A whole number below `limit`, each as likely.
   * @param {number} limit
   * @returns {number}
   */
  function drawn(limit) {
    const fair = Math.floor(2 ** 32 / limit) * limit;
    let number = bits();
    while (number >= fair) number = bits();
    return number % limit;
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

  Basinside.shuffled = shuffled;

  const kindOf = (/** @type {Item} */ item) => Basinside.answerKinds.of(item);

  /** @param {Item} item @returns {ItemAnswer} */
  function blank(item) {
    return {
      item: item.item, order: kindOf(item).mixed(item), chosen: [], ordered: [], typed: '', sure: '',
      checked: false, seconds: 0, changes: 0,
    };
  }

  /**
   * Whether anything of an answer was given, be it whole or not.
   * @param {ItemAnswer} answer
   * @returns {boolean}
   */
  function begun(answer) {
    return answer.chosen.length + answer.ordered.length + answer.typed.trim().length > 0;
  }

  /**
   * What is missing before an answer can be checked, or null.
   * @param {Item} item @param {ItemAnswer} answer
   * @returns {{key: string, holes?: Record<string, string | number>} | null}
   */
  function missing(item, answer) {
    return kindOf(item).missing(item, answer);
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
    const answers = sheet.answers.map((each, n) =>
      begun(each) ? each : /** @type {ItemAnswer} */ (kept.answers[n])
    );
    return { at: sheet.answers.some(begun) ? sheet.at : kept.at, answers };
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
   * The sheet after an order, a number or how sure one is was given; nothing once it was checked.
   * @param {Sheet} sheet @param {number} index
   * @param {{ordered?: number[], typed?: string, sure?: Sure}} given
   * @returns {Sheet}
   */
  function give(sheet, index, given) {
    return sheet.answers[index]?.checked === false ? withAnswer(sheet, index, given) : sheet;
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
    return Basinside.marking.evaluate(item.plan, kindOf(item).plan(item, answer));
  }

  /** @param {Item} item @param {ItemAnswer} answer @returns {boolean} a number that hurts somebody */
  function onUnsafeSide(item, answer) {
    const { number } = kindOf(item).plan(item, answer);
    const { low, high } = item.plan.pass_all[0]?.between || {};
    if (number === undefined || !item.answer) return false;
    const { unsafe } = item.answer;
    const below = low !== undefined && Basinside.marking.compare(number, low) < 0;
    const above = high !== undefined && Basinside.marking.compare(number, high) > 0;
    return (below && unsafe !== 'above' && unsafe !== 'neither') ||
      (above && unsafe !== 'below' && unsafe !== 'neither');
  }

  /**
   * How an item went, in a word that names a phrase.
   * @param {Item} item @param {ItemAnswer} answer
   * @returns {'unsafe' | 'safety' | 'wrong' | 'open' | 'right'}
   */
  function standing(item, answer) {
    if (missing(item, answer)) return 'open';
    const { passed, unsafe } = outcome(item, answer);
    if (unsafe.length || onUnsafeSide(item, answer)) return 'unsafe';
    if (passed) return 'right';
    return item.critical ? 'safety' : 'wrong';
  }

  const URGENCY = ['unsafe', 'safety', 'wrong', 'open'];

  /**
   * What to repeat: first what somebody would have done at once though it was not right, then the
   * most dangerous.
   * @param {Item[]} items @param {Sheet} sheet
   * @returns {{index: number, why: string, sure: boolean}[]}
   */
  function toRepeat(items, sheet) {
    return items
      .map((item, index) => {
        const answer = /** @type {ItemAnswer} */ (sheet.answers[index]);
        const why = standing(item, answer);
        return { index, why, sure: why !== 'open' && answer.sure === 'now' };
      })
      .filter(({ why }) => why !== 'right')
      .sort(
        (a, b) =>
          Number(b.sure) - Number(a.sure) ||
          URGENCY.indexOf(a.why) - URGENCY.indexOf(b.why) || a.index - b.index
      );
  }

  Basinside.selfTest = Object.freeze({
    LONGEST_SECONDS, MOST_CHANGES, blank, fresh, merged, begun, missing, withAnswer, choose, give,
    spend, outcome, standing, toRepeat,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
