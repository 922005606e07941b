/* Times that run at the steps: when each began, when it is out, what is left. Values in, values out.
   Moments are milliseconds of the device's clock; what is kept is read back as a stranger's text. */
(function (Basinside) {
  'use strict';

  const FORMAT = 'basinside/timers/1';
  const MOST = 40; // times that run at once on one device (our own cap)
  const LONGEST_NAME = 120;
  const SECOND = 1000;
  const OLDEST = 7 * 24 * 3600 * SECOND; // forgotten times are dropped after a week

  /**
   * @typedef {{id: string, step: string, name: string, began: number, seconds: number,
   *   longest: number | null, broken: number | null, goesOn: boolean, paused: number}} Timer
   *   `step` is procedure/step; `longest` are the seconds after which it must be out;
   *   `broken` is the moment at which it was interrupted, null while it runs; `goesOn` tells
   *   whether it goes on after that, and `paused` for how many seconds it stood still so far
   * @typedef {{state: 'running' | 'reached' | 'too-long' | 'interrupted' | 'clock-changed',
   *   out: number, latest: number | null, left: number, over: number}} Reading
   *   `left` and `over` are whole seconds until and since the time was reached
   */

  /**
   * @param {Timer} timer @param {number} now
   * @returns {Reading}
   */
  function read(timer, now) {
    const out = timer.began + (timer.seconds + (timer.paused || 0)) * SECOND;
    const latest = timer.longest === null ? null : timer.began + timer.longest * SECOND;
    const left = Math.max(0, Math.ceil((out - now) / SECOND));
    const over = Math.max(0, Math.floor((now - out) / SECOND));
    const reading = { out, latest, left, over };
    if (timer.broken !== null) return { state: 'interrupted', ...reading };
    if (now < timer.began) return { state: 'clock-changed', ...reading };
    if (now < out) return { state: 'running', ...reading };
    return { state: latest !== null && now > latest ? 'too-long' : 'reached', ...reading };
  }

  /**
   * A time that was interrupted and goes on now: the pause is added, the latest end stays.
   * @param {Timer} timer @param {number} now
   * @returns {Timer}
   */
  function resumed(timer, now) {
    if (timer.broken === null) return timer;
    const pause = Math.max(0, Math.ceil((now - timer.broken) / SECOND));
    return { ...timer, broken: null, paused: (timer.paused || 0) + pause };
  }

  /**
   * Hours, minutes and seconds as a running time shows them.
   * @param {number} seconds
   */
  function counted(seconds) {
    const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
    const hours = Math.floor(seconds / 3600);
    const rest = `${two(Math.floor((seconds % 3600) / 60))}:${two(seconds % 60)}`;
    return hours ? `${hours}:${rest}` : rest;
  }

  /**
   * The clock time of a moment, as it is written on a log.
   * @param {number} moment
   */
  function clock(moment) {
    const then = new Date(moment);
    const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
    return `${two(then.getHours())}:${two(then.getMinutes())}`;
  }

  /**
   * How many midnights lie between two moments.
   * @param {number} from @param {number} to
   */
  function midnights(from, to) {
    const day = (/** @type {number} */ moment) => {
      const then = new Date(moment);
      return Date.UTC(then.getFullYear(), then.getMonth(), then.getDate()) / 86400000;
    };
    return day(to) - day(from);
  }

  /** @param {unknown} value @returns {value is number} */
  const whole = (value) => Number.isSafeInteger(value) && Number(value) >= 0;

  /** @param {any} each @returns {Timer | null} */
  function sound(each) {
    if (!each || typeof each !== 'object') return null;
    const { id, step, name, began, seconds, longest, broken } = each;
    const words = typeof id === 'string' && typeof step === 'string' && typeof name === 'string';
    const numbers = whole(began) && whole(seconds);
    const rest = [longest, broken].every((value) => value === null || whole(value));
    if (!words || !numbers || !rest) return null;
    const goesOn = each.goesOn === true;
    const paused = whole(each.paused) ? each.paused : 0;
    const short = name.slice(0, LONGEST_NAME);
    return { id, step, name: short, began, seconds, longest, broken, goesOn, paused };
  }

  /**
   * What was kept, without what is no time or was forgotten.
   * @param {string | null} text @param {number} now
   * @returns {Timer[]}
   */
  function readKept(text, now) {
    try {
      const kept = JSON.parse(text || 'null');
      if (!kept || kept.format !== FORMAT || !Array.isArray(kept.timers)) return [];
      return kept.timers
        .slice(0, MOST)
        .map(sound)
        .filter((/** @type {Timer | null} */ each) => each !== null && now - each.began < OLDEST);
    } catch {
      return [];
    }
  }

  /** @param {Timer[]} timers */
  const keptText = (timers) => JSON.stringify({ format: FORMAT, timers: timers.slice(0, MOST) });

  Basinside.timing = Object.freeze({
    MOST,
    LONGEST_NAME,
    read,
    resumed,
    counted,
    clock,
    midnights,
    readKept,
    keptText,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
