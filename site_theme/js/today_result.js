/* What ticks mean for each instrument: what is open and when it is ready, what it lacks, and what
   is never open and why. */
(function (Basinside) {
  'use strict';

  const MINUTE = 60 * 1000;
  const ROUNDED_TO = 5 * MINUTE;

  /**
   * When a way that begins now is done, as a clock time rounded up.
   * @param {number} minutes @param {number} now
   */
  function readyAt(minutes, now) {
    const { clock, midnights } = Basinside.timing;
    const begun = Math.floor(now / MINUTE) * MINUTE;
    const then = Math.ceil((begun + minutes * MINUTE) / ROUNDED_TO) * ROUNDED_TO;
    const time = clock(then);
    return midnights(now, then) ? Basinside.say('today.tomorrow', { time }) : time;
  }

  /** @param {any} way @param {number} now */
  function openWay(way, now) {
    const { make, say } = Basinside;
    const ready = say('today.ready', { about: way.about, time: readyAt(way.minutes, now) });
    return make(
      'li',
      {},
      make('a', { href: way.href }, make('b', {}, way.name)),
      make('span', { class: 'ready', 'data-minutes': way.minutes, 'data-about': way.about }, ready),
      make(
        'small',
        {},
        way.for
          ? say('today.reaches-parts', { level: way.level, parts: way.for })
          : say('today.reaches', { level: way.level })
      )
    );
  }

  /** @param {any} bath @param {any} tick */
  function daysOld(bath, tick) {
    const { dayNumber } = Basinside.shift;
    const days = dayNumber(Basinside.day(new Date())) - (dayNumber(tick.made) || 0);
    return days === 1
      ? Basinside.say('today.bath.yesterday', { life: bath.life })
      : Basinside.say('today.bath.days-old', { n: days, life: bath.life });
  }

  /** @param {any} bath @param {string} why @param {any} ticks */
  function bathWords(bath, why, ticks) {
    const tick = ticks.baths[bath.route] || Basinside.shift.noBath();
    if (why === 'old') return daysOld(bath, tick);
    return Basinside.say(`today.bath.${why}`, { heat: tick.heat, least: bath.heat });
  }

  /** Whether a new bath is what would do. @param {string} why */
  const asksForNew = (why) => ['unmade', 'old', 'failed', 'cold'].includes(why);

  /** @param {any} plan @param {any} lack @param {any} ticks */
  function lackedBath(plan, lack, ticks) {
    const { make, say, tickAnchor } = Basinside;
    const bath = plan.baths.find((/** @type {any} */ each) => each.route === lack.id);
    const makes = asksForNew(lack.why) ? bath.makes : [];
    const ways = makes.flatMap((/** @type {any} */ each, /** @type {number} */ at) => [
      at ? ', ' : ' ',
      make('a', { href: each.href }, each.text),
    ]);
    return make(
      'p',
      {},
      bathWords(bath, lack.why, ticks),
      ...(ways.length ? [' ', say('today.bath.make'), ...ways, '.'] : []),
      ' ',
      make('a', { class: 'screen-only', href: `#${tickAnchor(`bath/${bath.route}`)}` }, say('today.bath.go'))
    );
  }

  /** @param {any} way @param {any} plan @param {any} names */
  function lackedVessel(way, plan, names) {
    const { make, say } = Basinside;
    const able = way.vessels.map((/** @type {string} */ each) => names[each]).join(', ');
    return make('p', {}, say('today.lacks.vessel', { vessels: able }));
  }

  /** @param {string[]} needs @param {Record<string, string>} names */
  function lackedNeeds(needs, names) {
    const { make, say, tickAnchor } = Basinside;
    const links = needs.flatMap((need, n) => [
      n ? ', ' : ' ',
      make('a', { href: `#${tickAnchor(need)}` }, (names[need] || need).toLowerCase()),
    ]);
    return make('p', {}, say('today.lacks'), ...links, '. ', say(needs.length > 1 ? 'today.lacks.some' : 'today.lacks.one'));
  }

  /** @param {any} plan @param {any} way @param {any[]} lacks @param {any} ticks @param {any} names */
  function shutWay(plan, way, lacks, ticks, names) {
    const { make, say } = Basinside;
    const needs = lacks.filter(({ what }) => what === 'need').map(({ id }) => id);
    return make(
      'li',
      {},
      make('b', {}, way.for ? say('today.way-parts', { way: way.name, parts: way.for }) : way.name),
      ...(lacks.some(({ what }) => what === 'vessel') ? [lackedVessel(way, plan, names)] : []),
      ...lacks.filter(({ what }) => what === 'bath').map((lack) => lackedBath(plan, lack, ticks)),
      ...(needs.length ? [lackedNeeds(needs, names)] : [])
    );
  }

  /** @param {any} instrument */
  function never(instrument) {
    const { make, say, prose } = Basinside;
    if (!instrument.refused.length) return [];
    const ways = instrument.refused.map((/** @type {any} */ each) => each.name).join(' · ');
    const inside = instrument.refused.map((/** @type {any} */ each) =>
      make(
        'li',
        {},
        make('b', {}, each.name),
        ...each.rows.map((/** @type {string[]} */ [part, what, source]) =>
          make('p', {}, `${part}: ${what}`, ...(source ? [' ', make('small', {}, source)] : []))
        )
      )
    );
    return [
      make(
        'details',
        { 'data-keep': instrument.instrument },
        make('summary', {}, say('today.never', { ways })),
        make('ul', { class: 'never-ways' }, ...inside),
        make('p', {}, ...prose(instrument.instead))
      ),
      make('p', { class: 'never-line' }, say('today.never', { ways })),
    ];
  }

  /** @param {any} instrument */
  function emergency(instrument) {
    const { make, say, prose } = Basinside;
    const rules = instrument.emergency.map((/** @type {any} */ rule) =>
      make('p', {}, make('b', {}, rule.when), ' ', ...prose(rule.do), ' ', make('small', {}, rule.by))
    );
    return make(
      'div',
      { class: 'emergency' },
      make('h4', {}, say('today.emergency')),
      ...rules,
      ...(instrument.ring ? [make('p', {}, instrument.ring)] : [])
    );
  }

  /** @param {any} instrument @param {any} found */
  function stateWords(instrument, found) {
    const parts = found.left.map((/** @type {string} */ each) => instrument.parts[each]).join(', ');
    return Basinside.say(`today.state.${found.state}`, { parts });
  }

  /**
   * @param {any} plan @param {any} instrument @param {any} found @param {any} ticks
   * @param {any} names @param {number} now
   */
  function section(plan, instrument, found, ticks, names, now) {
    const { make, say } = Basinside;
    const paired = instrument.ways.map((/** @type {any} */ way, /** @type {number} */ n) => ({
      way,
      lacks: found.ways[n].missing,
    }));
    const open = paired.filter((/** @type {any} */ { lacks }) => !lacks.length);
    const shut = paired.filter((/** @type {any} */ { lacks }) => lacks.length);
    return make(
      'section',
      { class: 'usable', 'data-state': found.state, id: `today-${instrument.instrument}` },
      make('h3', {}, make('a', { href: instrument.href }, instrument.name)),
      make('p', { class: 'needed' }, say('today.needed', { level: instrument.needed })),
      make('p', { class: 'state' }, stateWords(instrument, found)),
      ...(open.length
        ? [make('ul', { class: 'open-ways' }, ...open.map((/** @type {any} */ { way }) => openWay(way, now)))]
        : []),
      ...(found.state === 'whole' ? [] : [emergency(instrument)]),
      ...(shut.length
        ? [make('ul', { class: 'shut-ways' }, ...shut.map((/** @type {any} */ { way, lacks }) => shutWay(plan, way, lacks, ticks, names)))]
        : []),
      ...never(instrument)
    );
  }

  /** @param {any} plan @returns {Record<string, string>} */
  function namesOf(plan) {
    const all = [...plan.vessels, ...plan.groups.flatMap((/** @type {any} */ each) => each.needs)];
    return Object.fromEntries(all.map((each) => [each.id, each.name]));
  }

  /**
   * One line for each instrument: what is open.
   * @param {any} plan @param {any[]} found
   */
  Basinside.shiftGlance = function (plan, found) {
    const { make, say } = Basinside;
    const lines = found.map((each, n) => {
      const { instrument, name, ways } = plan.instruments[n];
      const open = ways.filter((/** @type {any} */ _way, /** @type {number} */ w) => !each.ways[w].missing.length);
      const names = open.map((/** @type {any} */ way) => way.name).join(' · ');
      const words = say(`today.glance.${each.state}`, { ways: names });
      return make(
        'li',
        { 'data-state': each.state },
        make('a', { href: `#today-${instrument}` }, make('b', {}, name), make('span', {}, words))
      );
    });
    return make('ul', { class: 'glance' }, ...lines);
  };

  /**
   * A section for each instrument, in the order of the plan.
   * @param {any} plan @param {any[]} found @param {any} ticks @param {number} now
   */
  Basinside.shiftResult = function (plan, found, ticks, now) {
    const names = namesOf(plan);
    return found.map((each, n) => section(plan, plan.instruments[n], each, ticks, names, now));
  };

  /**
   * Bring the times at which things are ready up to now.
   * @param {HTMLElement} container @param {number} now
   */
  Basinside.shiftTimes = function (container, now) {
    for (const each of container.querySelectorAll('[data-minutes]')) {
      const { minutes, about } = /** @type {HTMLElement} */ (each).dataset;
      each.textContent = Basinside.say('today.ready', {
        about: about || '',
        time: readyAt(Number(minutes), now),
      });
    }
  };

  Basinside.shiftNames = namesOf;
})(globalThis.Basinside = globalThis.Basinside || {});
