/* Out-times, discard days and sets: derive/amounts/{out_time,discard,sets}.py again. */
(function (Basinside) {
  'use strict';

  const HOLDS = { min: ['1', '10080'], h: ['0.1', '168'] };
  const LIVES = { day: ['1', '366'], week: ['1', '52'], month: ['1', '24'] };
  const DAY_MINUTES = 1440;
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0');

  /** @param {number} minute of any day */
  function clock(minute) {
    const here = minute % DAY_MINUTES;
    return `${two(Math.floor(here / 60))}:${two(here % 60)}`;
  }

  /** @param {any} ground @param {any} read */
  function outTime(ground, read) {
    const { times, over, ratio, ceil, plain } = Basinside.exact;
    const { said, dayText } = Basinside.typed;
    const [day, start] = read.moment('start');
    const own = ground.holds.map((/** @type {any[]} */ each) => each[0]);
    const asked = read.choice('hold', ['other', ...own]);
    let seconds;
    let longest = null;
    let echo;
    if (asked === 'other') {
      const unit = /** @type {keyof HOLDS} */ (read.choice('unit', Object.keys(HOLDS)));
      const number = read.number('time', ...HOLDS[unit], unit);
      seconds = times(number, ratio(unit === 'h' ? 3600 : 60));
      echo = said('echo-hold', { number: plain(number), unit });
    } else {
      const found = ground.holds[own.indexOf(asked)];
      seconds = ratio(found[1]);
      longest = found[2];
      echo = said('echo-own-hold', { number: String(Math.ceil(found[1] / 60)), figure: asked });
    }
    const minutes = Number(ceil(over(seconds, ratio(60))));
    /** @param {string} word @param {number} minute */
    const on = (word, minute) => {
      const days = Math.floor(minute / DAY_MINUTES);
      const out_day = dayText(day + days);
      const code = days === 0 ? 'same-day' : days === 1 ? 'next-day' : 'days-later';
      return said(`${word}-${code}`, days > 1 ? { out_day, days: String(days) } : { out_day });
    };
    const out = start + minutes;
    const amounts = [{ number: clock(out), unit: '', of: on('out', out) }];
    if (longest !== null) {
      const late = start + Math.floor(longest / 60);
      amounts.push({ number: clock(late), unit: '', of: on('latest', late) });
    }
    return {
      inputs: [said('echo-start', { time: clock(start), start_day: dayText(day) }), echo],
      amounts,
      working: [said('work-out', { start: clock(start), minutes: String(minutes), out: clock(out) })],
    };
  }

  /**
   * The same day so many months later, or that month's last day.
   * @param {number} day @param {number} months
   */
  function addMonths(day, months) {
    const [year, month, date] = Basinside.typed.dayText(day).split('-').map(Number);
    const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
    return Date.UTC(year, month - 1 + months, Math.min(date, last)) / 86400000;
  }

  /** @param {any} ground @param {any} read */
  function discard(ground, read) {
    const { said, dayText, Refused } = Basinside.typed;
    const made = read.day('made');
    if (made === null) throw new Refused(said('missing', { field: 'made' }), said('not-a-day-write'));
    const made_day = dayText(made);
    const own = ground.lives.map((/** @type {any[]} */ each) => each[0]);
    const asked = read.choice('product', ['other', ...own]);
    let number;
    let unit;
    if (asked === 'other') {
      unit = /** @type {keyof LIVES} */ (read.choice('unit', Object.keys(LIVES)));
      number = read.whole('life', ...LIVES[unit]);
    } else {
      [, number, unit] = ground.lives[own.indexOf(asked)];
    }
    /** @param {string} field */
    const seen = (field) => {
      const day = read.day(field);
      if (day !== null && day < made) {
        const holes = { field, seen_day: dayText(day), made_day };
        throw new Refused(said('before-made', holes), said('check-days'));
      }
      return day;
    };
    const [strip, cloudy] = [seen('strip'), seen('cloudy')];
    const days = number * (unit === 'week' ? 7 : 1);
    const end = unit === 'month' ? addMonths(made, number) : made + days;
    /** @type {[number, string][]} */
    const ends = [[end, unit === 'month' ? 'discard-months' : 'discard-days']];
    if (cloudy !== null) ends.unshift([cloudy, 'discard-cloudy']);
    if (strip !== null) ends.unshift([strip, 'discard-strip']);
    const [on, why] = ends.reduce((first, each) => (each[0] < first[0] ? each : first));
    return {
      inputs: [
        said('echo-made', { made_day }),
        said(`echo-life-${unit}`, { number: String(number) }),
        ...(strip === null ? [] : [said('echo-strip', { strip_day: dayText(strip) })]),
        ...(cloudy === null ? [] : [said('echo-cloudy', { cloudy_day: dayText(cloudy) })]),
      ],
      amounts: [{ number: dayText(on), unit: 'date', of: said(why) }],
      working: [
        unit === 'month'
          ? said('work-months', { made_day, number: String(number) })
          : said('work-days', { made_day, number: String(days) }),
      ],
    };
  }

  /** @param {any} _ground @param {any} read */
  function sets(_ground, read) {
    const { times, over, ratio, ceil, up, plain } = Basinside.exact;
    const { said } = Basinside.typed;
    const cases = read.number('cases', '0', '1000');
    const unit = /** @type {keyof HOLDS} */ (read.choice('unit', Object.keys(HOLDS)));
    const turnaround = read.number('turnaround', ...HOLDS[unit], unit);
    const minutes = times(turnaround, ratio(unit === 'h' ? 60 : 1));
    const hours = read.number('hours', '1', '24', 'h');
    const reserve = read.whole('reserve', '0', '100');
    const open = times(hours, ratio(60));
    const share = over(times(cases, minutes), open);
    const turning = Number(ceil(share));
    const total = String(turning + reserve);
    return {
      inputs: [
        said('echo-cases', { number: plain(cases) }),
        said('echo-turnaround', { number: plain(turnaround), unit }),
        said('echo-hours', { number: plain(hours) }),
        said('echo-reserve', { number: String(reserve) }),
      ],
      amounts: [{ number: total, unit: 'sets', of: said('of-sets') }],
      working: [
        said('work-sets', {
          cases: plain(cases), minutes: plain(minutes), open: plain(open), share: plain(up(share)),
          turning: String(turning),
        }),
        said('work-reserve', { turning: String(turning), reserve: String(reserve), total }),
      ],
    };
  }

  Basinside.days = Object.freeze({ outTime, discard, sets });
})(globalThis.Basinside = globalThis.Basinside || {});
