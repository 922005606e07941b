/* Boiling, gauge and a steam load: derive/amounts/{boiling,gauge,load}.py again, on its table. */
(function (Basinside) {
  'use strict';

  const DIAL_KPA = 5;
  const HUNDREDTHS = 100;
  const MOST_READINGS = 500;
  const DAY_MINUTES = 1440;
  const MOST_PLACES = 2;
  const GAPS = /[ \t\n\r\f\v\u00a0\u2009\u202f]+/;
  const CLOCK = /^([01]?[0-9]|2[0-3]):([0-5][0-9])$/;

  /** @typedef {{n: bigint, d: bigint}} Ratio */

  /** @param {any} ground @param {any} read */
  function altitude(ground, read) {
    const { over, ratio, ceil, plain } = Basinside.exact;
    const table = ground.heights;
    const { said, Refused } = Basinside.typed;
    let metres;
    try {
      metres = read.number('altitude', '0', String(table.highest), 'm');
    } catch (error) {
      if (!(error instanceof Refused) || error.reason[0] !== 'out-of-range') throw error;
      throw new Refused(error.reason, said('altitude-metres'));
    }
    const at = Number(ceil(over(metres, ratio(table.step))));
    return {
      at,
      echo: said('echo-altitude', { number: plain(metres) }),
      work: said('work-height', { metres: String(at * table.step) }),
    };
  }

  /** @param {any} ground @param {any} read */
  function boiling(ground, read) {
    const { ratio, floor, order, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const high = altitude(ground, read);
    const boils = ratio(ground.heights.boils[high.at], 10);
    const celsius = plain(boils);
    const enough = ground.enough_celsius;
    const hot = enough && order(boils, Basinside.exact.read(enough)) >= 0;
    return {
      inputs: [high.echo],
      amounts: [
        ...(ground.boil_minutes
          ? [{ number: ground.boil_minutes, unit: 'min', of: said('of-rolling-boil') }]
          : []),
        { number: String(floor(boils)), unit: '°C', of: said('of-boiling-water') },
      ],
      working: [
        high.work,
        said('work-boils', { celsius }),
        ...(hot ? [said('work-hot-enough', { celsius, enough })] : []),
      ],
    };
  }

  /** @param {any} table @param {number} celsius @param {number} at whole kPa, rounded up */
  const gaugeKpa = (table, celsius, at) =>
    Math.ceil((table.steam[celsius - table.lowest_celsius] - table.air[at]) / HUNDREDTHS);

  /**
   * A unit of gauges, from the page: how many kPa one is worth, and what a plate may say in it.
   * @param {any} ground @param {string} unit
   */
  function dial(ground, unit) {
    const [over, under, low, high] = ground.dials[unit];
    return { kpa: Basinside.exact.ratio(BigInt(over), BigInt(under)), low, high };
  }

  /** @param {any} ground @param {any} read */
  function vesselOf(ground, read) {
    const { times, tenthsDown, plain } = Basinside.exact;
    const ids = ground.vessels.map((/** @type {any[]} */ each) => each[0]);
    const asked = read.choice('vessel', ['other', ...ids]);
    if (asked !== 'other') {
      const [id, name, oven, limit, weight] = ground.vessels[ids.indexOf(asked)];
      return { id, name, oven, limit, weight };
    }
    const unit = read.choice('unit', Object.keys(ground.dials));
    const { kpa, low, high } = dial(ground, unit);
    const mark = times(read.number('mark', low, high, unit), kpa);
    return { id: 'other', name: '', oven: false, limit: plain(tenthsDown(mark)), weight: false };
  }

  /** @param {any} ground @param {any} vessel @param {number} celsius @param {number} needed @param {number} at */
  function refuse(ground, vessel, celsius, needed, at) {
    const { said, Refused } = Basinside.typed;
    const table = ground.heights;
    let reached = table.lowest_celsius + table.steam.length - 1;
    while (reached >= table.lowest_celsius && gaugeKpa(table, reached, at) > Number(vessel.limit)) reached -= 1;
    const others = ground.vessels
      .filter(
        (/** @type {any[]} */ [id, , oven, limit]) =>
          id !== vessel.id && !oven && limit && needed <= Number(limit)
      )
      .map((/** @type {any[]} */ each) => said('other-vessel', { vessel: each[1] }));
    throw new Refused(
      said(vessel.weight ? 'weight-too-early' : 'cannot-reach', {
        celsius: String(celsius), needed: String(needed), limit: vessel.limit,
      }),
      ...others,
      said('boil-if-allowed'),
      said('never-alter'),
      reached >= table.lowest_celsius ? said('only-reaches', { reached: String(reached) }) : said('barely-boils')
    );
  }

  /** @param {any} ground @param {number} shown @param {Ratio} limit */
  function otherDials(ground, shown, limit) {
    const { ratio, over, times, ceil, order, plain } = Basinside.exact;
    /** @type {Record<string, string>} */
    const found = {};
    for (const name of /** @type {const} */ (['bar', 'psi', 'kgf/cm²'])) {
      const parts = name === 'psi' ? 10 : 100;
      const { kpa } = dial(ground, name);
      const value = ratio(ceil(times(over(ratio(shown), kpa), ratio(parts))), parts);
      if (order(times(value, kpa), limit) > 0) return [];
      found[name] = plain(value);
    }
    const holes = { kpa: String(shown), bar: found.bar || '', psi: found.psi || '', kgf: found['kgf/cm²'] || '' };
    return [Basinside.typed.said('work-dials', holes)];
  }

  /** @param {any} ground @param {any} read */
  function gauge(ground, read) {
    const { ratio, plain } = Basinside.exact;
    const { said, Refused } = Basinside.typed;
    const table = ground.heights;
    const vessel = vesselOf(ground, read);
    const top = table.lowest_celsius + table.steam.length - 1;
    const celsius = read.whole('temperature', String(table.lowest_celsius), String(top), '°C');
    const high = altitude(ground, read);
    const named = { vessel: vessel.name };
    if (vessel.oven) throw new Refused(said('no-steam-in-oven', named), said('choose-steam-vessel'));
    if (!vessel.limit) throw new Refused(said('no-mark', named), said('read-plate'));
    const needed = gaugeKpa(table, celsius, high.at);
    if (needed > Number(vessel.limit)) refuse(ground, vessel, celsius, needed, high.at);
    const round = Math.ceil(needed / DIAL_KPA) * DIAL_KPA;
    const shown = round > Number(vessel.limit) ? needed : round;
    const [steam, air] = [table.steam[celsius - table.lowest_celsius], table.air[high.at]];
    const hundredths = (/** @type {number} */ n) => plain(ratio(n, HUNDREDTHS));
    return {
      inputs: [
        vessel.name
          ? said('echo-vessel', { vessel: vessel.name, limit: vessel.limit })
          : said('echo-other-vessel', { limit: vessel.limit }),
        said('echo-temperature', { celsius: String(celsius) }),
        high.echo,
      ],
      amounts: [
        {
          number: String(shown), unit: 'kpa-gauge',
          of: said('of-gauge', { celsius: String(celsius), limit: vessel.limit }),
        },
      ],
      working: [
        high.work,
        said('work-gauge', {
          steam: hundredths(steam), air: hundredths(air), needed: hundredths(steam - air), shown: String(shown),
        }),
        ...otherDials(ground, shown, Basinside.exact.read(vessel.limit)),
        ...(vessel.weight ? [said('work-weight', { limit: vessel.limit })] : []),
      ],
    };
  }

  /** @param {any} read @param {string} text @param {string} field @param {string} low @param {string} high */
  function reading(read, text, field, low, high, unit = '') {
    const { times, ratio } = Basinside.exact;
    const { said, Refused } = Basinside.typed;
    const number = read.readNumber(text, field, low, high, unit);
    if (times(number, ratio(10 ** MOST_PLACES)).d !== 1n) {
      const most = String(MOST_PLACES + 3);
      throw new Refused(said('too-many-figures', { field, most }), said('round-it', { most }));
    }
    return number;
  }

  /** @param {any} read */
  function readLog(read) {
    const { ratio, plus, minus, order } = Basinside.exact;
    const { said, bare, echoed, Refused } = Basinside.typed;
    const write = said('write-log');
    const day = ratio(DAY_MINUTES);
    const lines = read.text('log').split(/\r\n|[\r\n;]/).map(bare).filter(Boolean);
    if (lines.length < 2) throw new Refused(said('log-too-short'), write);
    if (lines.length > MOST_READINGS) throw new Refused(said('log-too-long', { most: String(MOST_READINGS) }), write);
    /** @type {{minute: Ratio, celsius: Ratio}[]} */
    const run = [];
    let clock = /** @type {boolean | null} */ (null);
    lines.forEach((/** @type {string} */ text, /** @type {number} */ at) => {
      const line = String(at + 1);
      const pieces = text.split(GAPS);
      if (pieces.length !== 2) throw new Refused(said('log-line', { line, typed: echoed(text) }), write);
      const found = CLOCK.exec(pieces[0] || '');
      if (clock !== null && clock !== Boolean(found)) throw new Refused(said('log-mixed', { line }), write);
      clock = Boolean(found);
      const before = run[run.length - 1];
      let minute = found
        ? ratio(Number(found[1]) * 60 + Number(found[2]))
        : reading(read, pieces[0] || '', 'minute', '0', String(DAY_MINUTES), 'min');
      if (found && before && order(minute, before.minute) <= 0) minute = plus(minute, day);
      const first = run[0];
      const backwards = before && order(minute, before.minute) <= 0;
      if (backwards || (first && order(minus(minute, first.minute), day) > 0)) {
        throw new Refused(said('log-order', { line }), write);
      }
      run.push({ minute, celsius: reading(read, pieces[1] || '', 'reading', '-40', '200', '°C') });
    });
    return { run, clock: clock === true };
  }

  /**
   * Each time at or above a temperature, straight lines between the readings (science/cycle.py).
   * @param {{minute: Ratio, celsius: Ratio}[]} run @param {Ratio} hot
   */
  function stretches(run, hot) {
    const { order, plus, minus, times, over } = Basinside.exact;
    /** @type {{start: Ratio, end: Ratio, fell: boolean}[]} */
    const found = [];
    /** @type {Ratio | null} */
    let start = null;
    run.forEach((now, at) => {
      const before = run[at - 1];
      const above = order(now.celsius, hot) >= 0;
      if (!before) {
        start = above ? now.minute : null;
        return;
      }
      let crossing = before.minute;
      if (order(before.celsius, hot) >= 0 !== above) {
        const share = over(minus(hot, before.celsius), minus(now.celsius, before.celsius));
        crossing = plus(crossing, times(minus(now.minute, before.minute), share));
      }
      if (start === null && above) start = crossing;
      else if (start !== null && !above) {
        found.push({ start, end: crossing, fell: true });
        start = null;
      }
    });
    const last = run[run.length - 1];
    if (start !== null && last) found.push({ start, end: last.minute, fell: false });
    return found;
  }

  /** @param {Ratio} moment @param {boolean} clock */
  function momentText(moment, clock) {
    const { floor, tenthsDown, plain } = Basinside.exact;
    if (!clock) return plain(tenthsDown(moment));
    const minute = Number(floor(moment)) % DAY_MINUTES;
    const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
    return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
  }

  /** @param {any} _ground @param {any} read */
  function load(_ground, read) {
    const { order, minus, tenthsDown, ratio, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const hot = read.number('temperature', '100', '200', '°C');
    const needed = read.number('minutes', '1', '600', 'min');
    const { run, clock } = readLog(read);
    const celsius = plain(hot);
    const all = stretches(run, hot).map((each) => ({ ...each, length: minus(each.end, each.start) }));
    const enough = all.find((each) => order(each.length, needed) >= 0);
    let longest = all[0];
    for (const each of all) if (longest && order(each.length, longest.length) > 0) longest = each;
    const counts = enough || longest;
    const first = all[0];
    const broken = first && first.fell && order(first.length, needed) < 0;
    const working = [];
    if (first) working.push(said('work-reached', { at: momentText(first.start, clock) }));
    if (first && broken) working.push(said('work-broken', { at: momentText(first.end, clock) }));
    if (counts) working.push(said('work-held-from', { at: momentText(counts.start, clock) }));
    return {
      inputs: [
        said('echo-needed', { celsius, minutes: plain(needed) }),
        said('echo-log', { count: String(run.length) }),
      ],
      amounts: [
        {
          number: '', unit: enough ? 'held' : 'not-held',
          of: said(enough ? 'of-held' : 'of-not-held', { celsius }),
        },
        {
          number: plain(tenthsDown(longest ? longest.length : ratio(0))), unit: 'min',
          of: said('of-longest', { celsius }),
        },
      ],
      working: working.length ? working : [said('work-never-reached')],
      would_do: enough ? [] : [said('load-not-released'), said('load-run-again'), said('load-tell')],
    };
  }

  Basinside.heat = Object.freeze({ boiling, gauge, load });
})(globalThis.Basinside = globalThis.Basinside || {});
