/* Evaluates a marking plan, as derive/marking.py does: data in, points out. */
(function (Basinside) {
  'use strict';

  const DECIMAL = /^-?[0-9]{1,12}(\.[0-9]{1,12})?$/;

  /**
   * A decimal as a whole number of billionths of a thousandth: exact, whatever its length.
   * @param {string} text
   * @returns {bigint}
   */
  function exact(text) {
    const [whole = '', fraction = ''] = text.replace('-', '').split('.');
    const size = BigInt(whole + fraction.padEnd(12, '0'));
    return text.startsWith('-') ? -size : size;
  }

  /**
   * Whether an answer is one that the item can have been given.
   * @param {Plan} plan
   * @param {PlanAnswer} answer
   * @returns {boolean}
   */
  function fits(plan, answer) {
    const given = ['chosen', 'order', 'number'].filter((kind) => kind in answer);
    if (given.length > 1) return false;
    const { chosen, order } = answer;
    if (chosen !== undefined) {
      return chosen.every((p, n) => p < plan.options && (n === 0 ? p >= 0 : p > (chosen[n - 1] ?? p)));
    }
    if (order !== undefined) {
      return order.length === plan.options && order.every((_, p) => order.includes(p));
    }
    return answer.number === undefined || DECIMAL.test(answer.number);
  }

  /**
   * @param {Condition} condition
   * @param {PlanAnswer} answer
   * @returns {boolean}
   */
  function met(condition, answer) {
    const chosen = answer.chosen || [];
    const order = answer.order || [];
    if (condition.has !== undefined) return chosen.includes(condition.has);
    if (condition.hasnt !== undefined) return !chosen.includes(condition.hasnt);
    if (condition.before !== undefined) {
      const [first, second] = condition.before.map((p) => order.indexOf(p));
      return first !== undefined && second !== undefined && first >= 0 && first < second;
    }
    if (condition.between === undefined) throw new TypeError('a condition of no known kind');
    if (answer.number === undefined) return false;
    const value = exact(answer.number);
    const { low, high } = condition.between;
    return (low === undefined || exact(low) <= value) && (high === undefined || value <= exact(high));
  }

  /**
   * Points for an answer. No answer, and one that does not fit the item, has no points.
   * @param {Plan} plan
   * @param {PlanAnswer} answer
   * @returns {Outcome}
   */
  function evaluate(plan, answer) {
    const chosen = answer.chosen || [];
    const empty = !chosen.length && !answer.order && answer.number === undefined;
    if (empty || !fits(plan, answer)) return { points: 0, passed: false, unsafe: [] };
    const failed = plan.fail_any.filter((each) => met(each, answer));
    const named = failed.flatMap((each) => (each.has === undefined ? [] : [each.has]));
    const unsafe = [...new Set(named)].sort((a, b) => a - b);
    const points = failed.length ? 0 : pointsOf(plan, answer);
    return { points, passed: points === plan.worth, unsafe };
  }

  /**
   * @param {Plan} plan
   * @param {PlanAnswer} answer
   * @returns {number}
   */
  function pointsOf(plan, answer) {
    if (plan.points.kind === 'plus-minus') {
      const { keys } = plan.points;
      const chosen = answer.chosen || [];
      const hits = chosen.filter((p) => keys.includes(p)).length;
      return Math.floor((plan.worth * Math.max(0, hits - (chosen.length - hits))) / keys.length);
    }
    return plan.pass_all.every((each) => met(each, answer)) ? plan.worth : 0;
  }

  /** @param {string} one @param {string} other @returns {number} below 0, 0 or above 0 */
  function compare(one, other) {
    const [left, right] = [exact(one), exact(other)];
    return left < right ? -1 : left > right ? 1 : 0;
  }

  Basinside.marking = Object.freeze({ evaluate, fits, compare });
})(globalThis.Basinside = globalThis.Basinside || {});
