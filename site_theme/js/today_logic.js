/* What is open this shift: ticks against the plan that Python derived. Values in, values out.
   Days are texts as in files, moments are milliseconds; what is kept is read as a stranger's text. */
(function (Basinside) {
  'use strict';

  const FORMAT = 'basinside/shift/1';
  const MOST = 400; // ticks that are read back (our own cap)
  const HOUR = 3600 * 1000;
  const DAY = 24 * HOUR;
  const ALLOWED_AHEAD = 5 * 60 * 1000; // clocks of one device do not differ by more
  const HEAT = /^[0-9]{1,2}(?:[.,][0-9]{1,2})?$/;
  const CIVIL_DAY = /^([0-9]{4})-([0-9]{2})-([0-9]{2})$/;

  /**
   * @typedef {{made: string, strip: '' | 'passed' | 'failed', read: string, heat: string}} BathTick
   *   `read` is the day on which the strip was read
   * @typedef {{set: number, works: string[], baths: Record<string, BathTick>}} Ticks
   *   `set` is the moment of the first tick of the shift, 0 before it
   * @typedef {{what: 'need' | 'vessel' | 'bath', id: string, why: string}} Missing
   * @typedef {{route: string, days: number | null, strip: boolean, least: string | null}} Bath
   * @typedef {{procedure: string, parts: string[], needs: string[], vessels: string[],
   *   bath: string}} Way
   * @typedef {{instrument: string, parts: Record<string, string>, ways: Way[]}} Instrument
   * @typedef {{hours: number, baths: Bath[], instruments: Instrument[]}} Plan
   */

  /** @returns {Ticks} */
  const none = () => ({ set: 0, works: [], baths: {} });

  /** @returns {BathTick} */
  const noBath = () => ({ made: '', strip: '', read: '', heat: '' });

  /**
   * A day as a whole number of days, or null when it is none.
   * @param {string} text
   */
  function dayNumber(text) {
    const found = CIVIL_DAY.exec(text);
    if (!found) return null;
    const [year, month, day] = found.slice(1).map(Number);
    const moment = Date.UTC(Number(year), Number(month) - 1, Number(day));
    return new Date(moment).toISOString().slice(0, 10) === text ? moment / DAY : null;
  }

  /**
   * A temperature as it is typed, with either decimal mark, or null.
   * @param {string} text
   */
  function heatOf(text) {
    const trimmed = text.trim();
    return HEAT.test(trimmed) ? Number(trimmed.replace(',', '.')) : null;
  }

  /**
   * What speaks against the age of a bath: `unmade`, `future`, `old`, or nothing.
   * @param {Bath} bath @param {BathTick} tick @param {string} today
   */
  function age(bath, tick, today) {
    if (bath.days === null) return '';
    const made = dayNumber(tick.made);
    const now = dayNumber(today);
    if (made === null || now === null) return 'unmade';
    if (made > now) return 'future';
    return now - made >= bath.days ? 'old' : '';
  }

  /** @param {Bath} bath @param {BathTick} tick @param {string} today */
  function strength(bath, tick, today) {
    if (!bath.strip) return '';
    if (tick.strip === 'failed') return 'failed';
    return tick.strip === 'passed' && tick.read === today ? '' : 'unread';
  }

  /** @param {Bath} bath @param {BathTick} tick */
  function warmth(bath, tick) {
    if (bath.least === null) return '';
    const heat = heatOf(tick.heat);
    if (heat === null) return tick.heat.trim() ? 'no-heat' : 'unmeasured';
    return heat < Number(bath.least) ? 'cold' : '';
  }

  /**
   * Every reason why a bath cannot be used; without one it can.
   * @param {Bath} bath @param {BathTick} tick @param {string} today
   * @returns {string[]}
   */
  function againstBath(bath, tick, today) {
    const aged = age(bath, tick, today);
    // A new bath is made anyway: strip and heat of the one before say nothing.
    if (aged) return [aged];
    return [strength(bath, tick, today), warmth(bath, tick)].filter((each) => each !== '');
  }

  /** @param {Plan} plan @param {Way} way @param {Ticks} ticks @param {string} today */
  function missing(plan, way, ticks, today) {
    const works = new Set(ticks.works);
    /** @type {Missing[]} */
    const found = [];
    if (way.vessels.length && !way.vessels.some((each) => works.has(each)))
      found.push({ what: 'vessel', id: '', why: '' });
    for (const bath of plan.baths)
      if (bath.route === way.bath)
        for (const why of againstBath(bath, ticks.baths[bath.route] || noBath(), today))
          found.push({ what: 'bath', id: bath.route, why });
    for (const need of way.needs)
      if (!works.has(need)) found.push({ what: 'need', id: need, why: '' });
    return found;
  }

  /**
   * What is open: each way with what it lacks, and the parts that no open way brings back.
   * @param {Plan} plan @param {Ticks} ticks @param {string} today
   */
  function evaluate(plan, ticks, today) {
    return plan.instruments.map((each) => {
      const ways = each.ways.map((way) => ({
        procedure: way.procedure,
        missing: missing(plan, way, ticks, today),
      }));
      const reached = new Set(
        each.ways.flatMap((way, n) => (ways[n]?.missing.length ? [] : way.parts))
      );
      const left = Object.keys(each.parts).filter((part) => !reached.has(part));
      const state = !reached.size ? 'none' : left.length ? 'parts' : 'whole';
      return { instrument: each.instrument, state, left, ways };
    });
  }

  /**
   * Until when ticks hold; 0 when nothing is ticked.
   * @param {Ticks} ticks @param {number} hours
   */
  const until = (ticks, hours) => (ticks.set ? ticks.set + hours * HOUR : 0);

  /** @param {any} each @returns {BathTick} */
  function soundBath(each) {
    const text = (/** @type {unknown} */ value) =>
      typeof value === 'string' && value.length <= 20 ? value : '';
    const given = each && typeof each === 'object' ? each : {};
    const strip = given.strip === 'passed' || given.strip === 'failed' ? given.strip : '';
    return { made: text(given.made), strip, read: text(given.read), heat: text(given.heat) };
  }

  /**
   * The ticks that were kept, while their shift lasts.
   * @param {string | null} text @param {number} now @param {number} hours
   * @returns {Ticks}
   */
  function readKept(text, now, hours) {
    try {
      const kept = JSON.parse(text || 'null');
      if (!kept || kept.format !== FORMAT || !Number.isSafeInteger(kept.set)) return none();
      if (kept.set <= 0 || kept.set > now + ALLOWED_AHEAD || now >= kept.set + hours * HOUR)
        return none();
      if (!Array.isArray(kept.works) || !kept.baths || typeof kept.baths !== 'object') return none();
      const works = kept.works
        .slice(0, MOST)
        .filter((/** @type {unknown} */ each) => typeof each === 'string');
      const baths = Object.entries(kept.baths).slice(0, MOST);
      return {
        set: kept.set,
        works,
        baths: Object.fromEntries(baths.map(([name, each]) => [name, soundBath(each)])),
      };
    } catch {
      return none();
    }
  }

  /** @param {Ticks} ticks */
  const keptText = (ticks) => JSON.stringify({ format: FORMAT, ...ticks });

  Basinside.shift = Object.freeze({
    none,
    noBath,
    heatOf,
    dayNumber,
    evaluate,
    until,
    readKept,
    keptText,
  });
})(globalThis.Basinside = globalThis.Basinside || {});
