/* One thing that an examination found: its code, how it stands, and plain data for the sentence. */
(function (Basinside) {
  'use strict';

  /** @type {(verdict: Finding['verdict']) => (code: string, data?: Record<string, string>) => Finding} */
  const kind = (verdict) => (code, data) => Object.freeze({ code, verdict, data: data || {} });

  Basinside.holds = kind('holds');
  Basinside.fails = kind('fails');
  Basinside.unknown = kind('unknown');
})(globalThis.Basinside = globalThis.Basinside || {});
