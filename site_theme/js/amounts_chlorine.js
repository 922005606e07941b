/* Chlorine from a bottle, a powder and tablets: derive/amounts/{liquid,powder,tablets}.py again. */
(function (Basinside) {
  'use strict';

  const LABELS = {
    available: ['0.1', '20', '%'],
    degrees: ['1', '60', 'degrees'],
    hypochlorite: ['0.1', '20', '%'],
  };
  const VOLUMES = { L: ['0.01', '1000'], mL: ['10', '1000000'] };
  const PERCENT_A_DEGREE = '0.3';
  const PERCENT_A_DEGREE_BY_GAS = '0.317';
  const CHLORINE_SHARE = [70906n, 74442n]; // of sodium hypochlorite, by mass
  const MUCH_STRONGER = 2;
  const PPM_IN_PERCENT = 10000;

  /** @typedef {{n: bigint, d: bigint}} Ratio */

  /** @param {any} read */
  function readVolume(read) {
    const { times, ratio, plain } = Basinside.exact;
    const unit = /** @type {'L' | 'mL'} */ (read.choice('unit', Object.keys(VOLUMES)));
    const number = read.number('volume', ...VOLUMES[unit], unit);
    return { ml: times(number, ratio(unit === 'L' ? 1000 : 1)), volume: plain(number), unit };
  }

  /** @param {any} read */
  const readWanted = (read) => read.number('wanted', '0.001', '20', '%');

  /** @param {Ratio} wanted @param {string} number @param {string} unit */
  function echo(wanted, number, unit) {
    const { plain, times, ratio } = Basinside.exact;
    const { said } = Basinside.typed;
    const ppm = plain(times(wanted, ratio(PPM_IN_PERCENT)));
    return [said('echo-wanted', { percent: plain(wanted), ppm }), said('echo-volume', { number, unit })];
  }

  /** @param {any} ground @param {string} kind @param {Ratio} product @param {Ratio} wanted */
  function refuseAbove(ground, kind, product, wanted) {
    const { order, read, plain } = Basinside.exact;
    const { said, Refused } = Basinside.typed;
    if (order(wanted, product) <= 0) return;
    const others = ['liquid', 'powder']
      .filter((name) => name !== kind && ground[name] && order(read(ground[name]), wanted) >= 0)
      .map((name) => said(`use-${name}`, { percent: ground[name] }));
    if (ground.tablet_grams) others.push(said('use-tablets'));
    const holes = { wanted: plain(wanted), product: plain(product) };
    throw new Refused(said('above-product', holes), said('use-stronger', { percent: plain(wanted) }), ...others);
  }

  /** @param {Ratio} product @param {Ratio} percent @param {Ratio} ml */
  function trueStrength(product, percent, ml) {
    const { over, times, down, plain } = Basinside.exact;
    return plain(down(over(times(product, percent), ml)));
  }

  /** @param {string} strength @param {Ratio} wanted */
  function moreCautions(strength, wanted) {
    const { read, order, times, ratio } = Basinside.exact;
    return order(read(strength), times(wanted, ratio(MUCH_STRONGER))) > 0 ? ['much-stronger'] : [];
  }

  /** @param {string} label @param {Ratio} strength @returns {[Ratio, any[]]} */
  function stockOf(label, strength) {
    const { plain, times, down, read, ratio } = Basinside.exact;
    const { said } = Basinside.typed;
    const number = plain(strength);
    if (label === 'degrees') {
      const stock = times(strength, read(PERCENT_A_DEGREE));
      const holes = { number, each: PERCENT_A_DEGREE, percent: plain(stock), other: PERCENT_A_DEGREE_BY_GAS };
      return [stock, [said('echo-degrees', { number }), said('work-degrees', holes)]];
    }
    if (label === 'hypochlorite') {
      const stock = down(times(strength, ratio(...CHLORINE_SHARE)));
      const working = said('work-hypochlorite', { number, percent: plain(stock) });
      return [stock, [said('echo-hypochlorite', { number }), working]];
    }
    return [strength, [said('echo-available', { number })]];
  }

  /** @param {any} ground @param {any} read */
  function liquid(ground, read) {
    const { over, times, up, down, least, order, minus, ratio, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const label = /** @type {keyof LABELS} */ (read.choice('label', Object.keys(LABELS)));
    const [stock, labelLines] = stockOf(label, read.number('strength', ...LABELS[label]));
    const wanted = readWanted(read);
    const { ml, volume, unit } = readVolume(read);
    refuseAbove(ground, 'liquid', stock, wanted);
    const product = over(times(ml, wanted), stock);
    const finer = least(up(product), ml);
    const out = Basinside.measures.measuredOut(product, ground, false, ml);
    const shown = out.total || finer;
    const strength = trueStrength(shown, stock, ml);
    const parts = minus(over(stock, wanted), ratio(1));
    const whole = { number: volume, unit };
    return {
      inputs: [...labelLines.slice(0, 1), ...echo(wanted, volume, unit)],
      amounts: [
        { number: plain(shown), unit: 'mL', of: said('of-liquid', { percent: plain(stock) }) },
        { number: plain(minus(ml, shown)), unit: 'mL', of: said('of-water', whole) },
        ...(order(finer, shown) < 0
          ? [{ number: plain(finer), unit: 'mL', of: said('of-finer-measure') }]
          : []),
      ],
      measured: out.lines,
      strength,
      working: [
        ...labelLines.slice(1),
        said(order(finer, product) === 0 ? 'work-liquid' : 'work-liquid-up', {
          product: plain(finer), ...whole, wanted: plain(wanted), stock: plain(stock),
        }),
        parts.n ? said('work-parts', { parts: plain(down(parts)) }) : said('work-neat'),
        ...out.working,
      ],
      more: [
        ...moreCautions(strength, wanted),
        ...(ground.measures.length && !out.lines.length ? ['measures-coarse'] : []),
        ...(out.moves > Basinside.measures.MANY_MOVES ? ['many-pours'] : []),
      ],
    };
  }

  /** @param {any} ground @param {any} read */
  function powder(ground, read) {
    const { over, times, up, ceil, order, ratio, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const active = read.number('strength', '1', '100', '%');
    const wanted = readWanted(read);
    const { ml, volume, unit } = readVolume(read);
    refuseAbove(ground, 'powder', active, wanted);
    const grams = over(times(ml, wanted), active);
    const out = Basinside.measures.measuredOut(grams, ground, true, null);
    const whole = ratio(ceil(grams));
    const strength = trueStrength(out.total || whole, active, ml);
    const finer = up(grams);
    const work = { product: plain(finer), number: volume, unit, wanted: plain(wanted), active: plain(active) };
    return {
      inputs: [said('echo-powder', { number: plain(active) }), ...echo(wanted, volume, unit)],
      amounts: [
        { number: plain(whole), unit: 'g', of: said('of-powder', { percent: plain(active) }) },
        ...(order(finer, whole) < 0 ? [{ number: plain(finer), unit: 'g', of: said('of-finer-scale') }] : []),
      ],
      measured: out.lines,
      strength,
      working: [
        said(order(finer, grams) === 0 ? 'work-powder' : 'work-powder-up', work),
        said('work-per-litre', { grams: plain(up(times(over(wanted, active), ratio(1000)))) }),
        ...(order(whole, grams) === 0 ? [] : [said('work-whole-grams', { grams: plain(whole) })]),
        ...out.working,
      ],
      more: moreCautions(strength, wanted),
    };
  }

  /** @param {any} _ground @param {any} read */
  function tablets(_ground, read) {
    const { over, times, ceil, ratio, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const grams = read.number('grams', '0.01', '20', 'g');
    const wanted = readWanted(read);
    const { ml, volume, unit } = readVolume(read);
    const each = ratio(ceil(over(times(wanted, ratio(10)), grams)));
    const count = ratio(ceil(over(times(ml, each), ratio(1000))));
    const strength = trueStrength(times(count, grams), ratio(100), ml);
    const whole = { number: volume, unit };
    return {
      inputs: [said('echo-tablets', { number: plain(grams) }), ...echo(wanted, volume, unit)],
      amounts: [{ number: plain(count), unit: 'tablets', of: said('of-tablets', whole) }],
      strength,
      working: [
        said('work-each-litre', { wanted: plain(wanted), grams: plain(grams), count: plain(each) }),
        said('work-tablets', { count: plain(count), ...whole, each: plain(each) }),
      ],
      more: moreCautions(strength, wanted),
    };
  }

  Basinside.chlorine = Object.freeze({ liquid, powder, tablets });
})(globalThis.Basinside = globalThis.Basinside || {});
