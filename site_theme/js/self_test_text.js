/* What of a self-test is written down: the attempt to save, and the draft that this device keeps. */
(function (Basinside) {
  'use strict';

  const DRAFT = 'basinside/draft/1';
  const ATTEMPT = 'basinside/attempt/1';

  /**
   * The attempt file: answers, never scores, nor how sure somebody was.
   * @param {{handbook: string, edition: string, language: string}} page
   * @param {string} topic @param {string} staffCode @param {string} date
   * @param {Item[]} asked @param {Sheet} sheet
   * @returns {string}
   */
  function attempt(page, topic, staffCode, date, asked, sheet) {
    const items = sheet.answers.map((answer, n) => {
      const { item, seconds, changes } = answer;
      const given = asked[n] ? Basinside.answerKinds.of(asked[n]).filed(asked[n], answer) : {};
      return { item, ...given, seconds, changes };
    });
    const attempt = {
      format: ATTEMPT, handbook: page.handbook, edition: page.edition, kind: 'self-test',
      id: topic, staff_code: staffCode, date, language: page.language, items,
    };
    return JSON.stringify(attempt, null, 1) + '\n';
  }

  /** @param {string} topic @param {Sheet} sheet */
  function draft(topic, sheet) {
    return JSON.stringify({ format: DRAFT, topic, at: sheet.at, items: sheet.answers });
  }

  /** @param {unknown} value @param {number} most @returns {boolean} */
  function isCount(value, most) {
    return Number.isInteger(value) && Number(value) >= 0 && Number(value) <= most;
  }

  /** @type {Sure[]} */
  const SURE = ['', 'now', 'look', 'ask'];

  /**
   * A kept answer, or null when it cannot be one to this item.
   * @param {any} found @param {Item} item
   * @returns {ItemAnswer | null}
   */
  function readAnswer(found, item) {
    const { missing, LONGEST_SECONDS, MOST_CHANGES } = Basinside.selfTest;
    const { order, chosen, ordered = [], typed = '', sure = '', checked, seconds, changes } = found;
    const answer = { item: item.item, order, chosen, ordered, typed, sure, checked, seconds, changes };
    const sound =
      Basinside.answerKinds.of(item).fits(item, answer) &&
      SURE.includes(sure) && typeof checked === 'boolean' && !(checked && missing(item, answer)) &&
      isCount(seconds, LONGEST_SECONDS) && isCount(changes, MOST_CHANGES);
    return sound ? answer : null;
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
      return (own && readAnswer(own, item)) || Basinside.selfTest.blank(item);
    });
    return { at: isCount(found.at, items.length - 1) ? found.at : 0, answers };
  }

  Basinside.sheetText = Object.freeze({ attempt, draft, readDraft });
})(globalThis.Basinside = globalThis.Basinside || {});
