/* The calculators of the page: what was typed, on what the clinic stands on, to an answer or a
   refusal, exactly as the generator gives it. Values in, values out; words are made elsewhere. */
(function (Basinside) {
  'use strict';

  /**
   * @param {any} ground what the generator wrote
   * @param {string} kind
   * @param {Record<string, string>} typed the fields as somebody typed them
   */
  function answer(ground, kind, typed) {
    const { liquid, powder, tablets } = Basinside.chlorine;
    const { boiling, gauge, load } = Basinside.heat;
    const { outTime, discard, sets } = Basinside.days;
    const work = {
      liquid, powder, tablets, boiling, gauge, load, discard, sets, 'out-time': outTime,
    }[kind];
    const read = Basinside.typed.reader(typed);
    const frame = {
      kind,
      inputs: [],
      amounts: [],
      measured: [],
      strength: '',
      working: [],
      cautions: ground.cautions[kind],
      sources: ground.sources[kind],
      refusal: null,
      would_do: [],
    };
    try {
      const { more = [], ...found } = work(ground, read);
      return {
        ...frame,
        ...found,
        inputs: [...found.inputs, ...read.notes],
        cautions: [...frame.cautions, ...more],
      };
    } catch (error) {
      if (!(error instanceof Basinside.typed.Refused)) throw error;
      return { ...frame, inputs: read.notes, refusal: error.reason, would_do: error.wouldDo };
    }
  }

  Basinside.amounts = Object.freeze({ answer });
})(globalThis.Basinside = globalThis.Basinside || {});
