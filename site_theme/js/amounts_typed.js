/* What somebody typed, read as strictly as the generator reads it (derive/amounts/typed.py). */
(function (Basinside) {
  'use strict';

  const MOST_FIGURES = 6;
  const MOST_SIGNS = 40;
  const ECHOED_SIGNS = 20;
  const FIRST_YEAR = 2000;
  const LAST_YEAR = 2100;
  const DAY_MS = 86400000;
  const AROUND = /^[ \t\n\r\f\v\u00a0\u2009\u202f]+|[ \t\n\r\f\v\u00a0\u2009\u202f]+$/g;
  const NUMBER = /^([0-9]+)(?:[.,]([0-9]+))?$/;
  const BELOW = /^[-\u2212\u2013] ?[0-9]+(?:[.,][0-9]+)?$/;
  const DAY = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/;
  const MOMENT = /^([0-9]{4}-[0-9]{2}-[0-9]{2})[T ]([0-9]{2}):([0-9]{2})$/;

  /**
   * A sentence: its code, and what fills its holes.
   * @typedef {[string, Record<string, string>]} Said
   */

  /** What cannot be answered: why, and what would do. */
  class Refused extends Error {
    /** @param {Said} reason @param {...Said} wouldDo */
    constructor(reason, ...wouldDo) {
      super(reason[0]);
      this.reason = reason;
      this.wouldDo = wouldDo;
    }
  }

  /** @param {string} code @param {Record<string, string>} [holes] @returns {Said} */
  const said = (code, holes = {}) => [code, holes];

  /** @param {string} text */
  const bare = (text) => text.replace(AROUND, '');

  /** @param {string} text */
  function echoed(text) {
    const signs = [...bare(text)];
    return signs.length <= ECHOED_SIGNS ? signs.join('') : `${signs.slice(0, ECHOED_SIGNS).join('')}…`;
  }

  /** @param {string} text @param {string} field @returns {RegExpExecArray} */
  function matched(text, field) {
    const write = said('write-number');
    if (!text) throw new Refused(said('missing', { field }), write);
    if ([...text].length > MOST_SIGNS) throw new Refused(said('too-long', { field }), write);
    if (BELOW.test(text)) throw new Refused(said('below-nought', { field, typed: echoed(text) }), write);
    const ways = Basinside.typedNumber.twoWays(text);
    if (ways && NUMBER.test(text)) {
      throw new Refused(said('two-ways', { field, typed: text, ...ways }), said('write-one-way', ways));
    }
    const found = NUMBER.exec(text);
    if (!found) throw new Refused(said('not-a-number', { field, typed: echoed(text) }), write);
    return found;
  }

  /** @param {string} code @param {string} text @param {string} field @returns {never} */
  function refuseDay(code, text, field) {
    const write = said(`${code}-write`);
    if (!text) throw new Refused(said('missing', { field }), write);
    throw new Refused(said(code, { field, typed: echoed(text) }), write);
  }

  /**
   * A civil day as days since 1970.
   * @param {string} text @param {string} field
   */
  function readDay(text, field) {
    const found = DAY.exec(text);
    if (!found) return refuseDay('not-a-day', text, field);
    const day = Date.parse(`${text}T00:00:00Z`) / DAY_MS;
    const year = Number(found[1]);
    const sound = Number.isInteger(day) && dayText(day) === text;
    if (!sound || year < FIRST_YEAR || year > LAST_YEAR) return refuseDay('not-a-day', text, field);
    return day;
  }

  /** @param {number} day */
  const dayText = (day) => new Date(day * DAY_MS).toISOString().slice(0, 10);

  /**
   * Reads the fields of one question; `notes` say how something was read.
   * @param {Record<string, string>} typed
   */
  function reader(typed) {
    const { read, order, plain } = Basinside.exact;
    /** @type {Said[]} */
    const notes = [];
    const text = (/** @type {string} */ field) => bare(typed[field] || '');

    /** @param {string} given @param {string} field @param {string} low @param {string} high */
    function readNumber(given, field, low, high, unit = '') {
      const found = matched(given, field);
      const [whole, decimals] = [found[1] || '', found[2] || ''];
      if ((whole + decimals).replace(/^0+/, '').length > MOST_FIGURES) {
        const most = String(MOST_FIGURES);
        throw new Refused(said('too-many-figures', { field, most }), said('round-it', { most }));
      }
      const number = read(decimals ? `${whole}.${decimals}` : whole);
      if (order(number, read(low)) < 0 || order(number, read(high)) > 0) {
        const range = { field, number: plain(number), low, high, unit };
        throw new Refused(said('out-of-range', range), said('check-unit'));
      }
      if (given.includes(',') && !notes.some(([code]) => code === 'read-comma')) {
        notes.push(said('read-comma', { typed: given, number: plain(number) }));
      }
      return number;
    }

    return {
      notes,
      text,
      readNumber,
      /** @param {string} field @param {string[]} among */
      choice(field, among) {
        const given = text(field);
        if (!among.includes(given)) {
          throw new Refused(said('not-a-choice', { field, typed: echoed(given) }), said('choose-one'));
        }
        return given;
      },
      /** @param {string} field @param {string} low @param {string} high */
      number: (field, low, high, unit = '') => readNumber(text(field), field, low, high, unit),
      /** @param {string} field @param {string} low @param {string} high */
      whole(field, low, high, unit = '') {
        const number = readNumber(text(field), field, low, high, unit);
        if (number.d !== 1n) {
          throw new Refused(said('not-whole', { field, number: plain(number) }), said('write-whole'));
        }
        return Number(number.n);
      },
      /** @param {string} field @returns {number | null} */
      day: (field) => (text(field) ? readDay(text(field), field) : null),
      /** @param {string} field @returns {[number, number]} the day, and minutes since its midnight */
      moment(field) {
        const given = text(field);
        const found = MOMENT.exec(given);
        if (!found) return refuseDay('not-a-moment', given, field);
        const [hour, minute] = [Number(found[2]), Number(found[3])];
        if (hour > 23 || minute > 59) return refuseDay('not-a-moment', given, field);
        return [readDay(found[1] || '', field), hour * 60 + minute];
      },
    };
  }

  Basinside.typed = Object.freeze({ Refused, said, bare, echoed, reader, dayText });
})(globalThis.Basinside = globalThis.Basinside || {});
