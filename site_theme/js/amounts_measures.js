/* An amount in the house's own measures: the ways of science/house_measures.py, in its order. */
(function (Basinside) {
  'use strict';

  const MOST_STEPS = 4;
  const MANY_MOVES = 8;

  /**
   * @typedef {{n: bigint, d: bigint}} Ratio
   * @typedef {{at: number, filled: Ratio, times: bigint}} Pour
   */

  /**
   * Every choice of `count` of some things, in order.
   * @template T
   * @param {T[]} things @param {number} count @param {boolean} again whether one may come again
   * @returns {T[][]}
   */
  function choices(things, count, again) {
    if (count === 0) return [[]];
    return things.flatMap((thing, at) =>
      choices(things.slice(again ? at : at + 1), count - 1, again).map((rest) => [thing, ...rest])
    );
  }

  /** @param {Pour[]} way @param {number} at @param {Ratio} filled @param {bigint} times */
  function pour(way, at, filled, times) {
    if (!times) return way;
    const same = way.find((each) => each.at === at && Basinside.exact.order(each.filled, filled) === 0);
    if (!same) return [...way, { at, filled, times }];
    return way.map((each) => (each === same ? { ...each, times: each.times + times } : each));
  }

  /** @param {Pour[]} way @returns {Ratio} */
  function total(way) {
    const { plus, times, ratio } = Basinside.exact;
    return way.reduce((sum, each) => plus(sum, times(each.filled, ratio(each.times))), ratio(0));
  }

  /** @param {Pour[]} way */
  const moves = (way) => way.reduce((sum, each) => sum + each.times, 0n);

  /**
   * What is read at marks, coarse ones first: down to a mark, and the last one up.
   * @param {Ratio} missing @param {Ratio[]} sizes @param {(Ratio | null)[]} marks @param {number} most
   */
  function readings(missing, sizes, marks, most) {
    const { order, least, over, times, ratio, floor, ceil, minus } = Basinside.exact;
    const marked = marks
      .map((mark, at) => ({ mark, at }))
      .filter((each) => each.mark !== null)
      .sort((a, b) => order(b.mark, a.mark) || a.at - b.at);
    /** @type {Pour[][]} */
    const found = [];
    for (let steps = 1; steps <= most; steps += 1) {
      for (const chosen of choices(marked, steps, false)) {
        /** @type {Pour[]} */
        let way = [];
        let left = missing;
        for (const { mark, at } of chosen.slice(0, -1)) {
          const filled = times(ratio(floor(over(least(left, sizes[at]), mark))), mark);
          way = pour(way, at, filled, filled.n ? 1n : 0n);
          left = minus(left, filled);
        }
        const last = chosen[chosen.length - 1];
        if (!last || order(left, sizes[last.at]) > 0) continue;
        const filled = least(times(ratio(ceil(over(left, last.mark))), last.mark), sizes[last.at]);
        found.push(pour(way, last.at, filled, left.n ? 1n : 0n));
      }
    }
    return found;
  }

  /**
   * @param {Ratio} wanted @param {Ratio[]} sizes @param {(Ratio | null)[]} marks
   * @returns {Pour[][]}
   */
  function ways(wanted, sizes, marks) {
    const { order, minus, over, ratio, floor, times } = Basinside.exact;
    let largest = 0;
    sizes.forEach((size, at) => {
      if (order(size, sizes[largest]) > 0) largest = at;
    });
    const smaller = sizes.map((_, at) => at).filter((at) => at !== largest);
    const full = /** @type {Ratio} */ (sizes[largest]);
    const found = [];
    for (let steps = 0; steps <= MOST_STEPS; steps += 1) {
      for (const chosen of choices(smaller, steps, true)) {
        let way = /** @type {Pour[]} */ ([]);
        for (const at of chosen) way = pour(way, at, /** @type {Ratio} */ (sizes[at]), 1n);
        let rest = minus(wanted, total(way));
        if (rest.n < 0n) rest = ratio(0);
        const many = floor(over(rest, full));
        const missing = minus(rest, times(full, ratio(many)));
        way = pour(way, largest, full, many);
        if (!missing.n) {
          found.push(way);
          continue;
        }
        found.push(pour(way, largest, full, 1n));
        for (const read of readings(missing, sizes, marks, MOST_STEPS - steps)) {
          found.push(read.reduce((both, each) => pour(both, each.at, each.filled, each.times), way));
        }
      }
    }
    return found;
  }

  /**
   * How an amount is measured out, never too little; no lines when no measure of the house fits.
   * @param {Ratio} amount @param {any} ground @param {boolean} byWeight @param {Ratio | null} most
   */
  function measuredOut(amount, ground, byWeight, most) {
    const { read, order, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const none = { lines: [], working: [], total: null, moves: 0 };
    const own = ground.measures.filter((/** @type {any[]} */ each) => each[3] === byWeight);
    if (!own.length) return none;
    const sizes = own.map((/** @type {any[]} */ each) => read(each[1]));
    const marks = own.map((/** @type {any[]} */ each) => (each[2] ? read(each[2]) : null));
    const all = ways(amount, sizes, marks);
    let best = /** @type {Pour[]} */ (all[0]);
    for (const way of all) {
      const nearer = order(total(way), total(best));
      if (nearer < 0 || (nearer === 0 && moves(way) < moves(best))) best = way;
    }
    const sum = total(best);
    if (most && order(sum, most) > 0) return none;
    const unit = byWeight ? 'g' : 'mL';
    const lines = [...best]
      .sort((a, b) => order(b.filled, a.filled) || a.at - b.at)
      .map((each) =>
        said(order(each.filled, sizes[each.at]) === 0 ? 'pour-full' : 'pour-to-mark', {
          times: String(each.times), measure: own[each.at][0], amount: plain(each.filled), unit,
        })
      );
    const working = [said('work-measured', { total: plain(sum), unit })];
    return { lines, working, total: sum, moves: Number(moves(best)) };
  }

  Basinside.measures = Object.freeze({ measuredOut, MANY_MOVES });
})(globalThis.Basinside = globalThis.Basinside || {});
