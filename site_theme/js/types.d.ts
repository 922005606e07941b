/* The shapes that the scripts share, for whoever checks their JSDoc types; never loaded. */
declare var Basinside: any;

/** A run of a sentence, as render writes it: text as it is, a value with its machine form, a link. */
type Span = string | { text: string; value?: string; href?: string };
type Prose = string | Span[] | null | undefined;

type Finding = {
  code: string;
  verdict: 'holds' | 'fails' | 'unknown';
  data: Record<string, string>;
};

/** What Python emits for the page that examines (certify/page_rules.py). */
type Rules = {
  context: unknown[];
  namespace: string;
  words: string[];
  record: any;
  trust: any;
};
type Examination = {
  findings: Finding[];
  standing: string;
  signer: string | null;
  record: any;
};

/** Marking plans, their answers and what these are worth (basinside.marking). */
type Condition = {
  has?: number;
  hasnt?: number;
  before?: [number, number];
  between?: { low?: string; high?: string };
};
type Plan = {
  item: string;
  critical: boolean;
  worth: number;
  options: number;
  points: { kind: 'all-or-none' } | { kind: 'plus-minus'; keys: number[] };
  pass_all: Condition[];
  fail_any: Condition[];
};
type PlanAnswer = { chosen?: number[]; order?: number[]; number?: string };
type Outcome = { points: number; passed: boolean; unsafe: number[] };

/** One question of a self-test; options stand in the authored order, as in its plan. */
type Link = { href: string; text: string };
type Option = { text: Prose; because: Prose; unsafe: boolean; right: boolean };
/** What an item without options is answered with; which members depend on its kind. */
type Sentence = { rule: string; because: Prose; belief: Prose };
type Mistake = { answer: Prose; because: Prose; belief: Prose };
type Answered = {
  because: Prose;
  belief: Prose;
  lines: Prose[];
  kept: Sentence[];
  before: [number, number][];
  unit: [string, string];
  units: Record<string, [string, string]>;
  unsafe: 'below' | 'above' | 'both' | 'neither';
  right: Prose;
  accepted: string;
  mistakes: Mistake[];
  numbers: [string, string][];
  rights: Prose[];
  keys: number[];
  wrong: number[][];
  pairs: { left: Prose; right: Prose; because: Prose; mistakes: Mistake[] }[];
};
type Item = {
  item: string;
  answer: Answered;
  kind: string;
  situation?: Prose;
  stem: Prose;
  critical: boolean;
  options: Option[];
  plan: Plan;
  built_on?: { word: string; says: Prose; source: Prose } | null;
  lead?: Link | Link[];
  scenario?: string;
};

/** What somebody would do with an answer; nothing when it was not said. */
type Sure = '' | 'now' | 'look' | 'ask';

/** `order` holds authored positions as shown; `chosen` and `ordered` hold positions in that order. */
type ItemAnswer = {
  item: string;
  order: number[];
  chosen: number[];
  ordered: number[];
  typed: string;
  sure: Sure;
  checked: boolean;
  seconds: number;
  changes: number;
};
type Sheet = { at: number; answers: ItemAnswer[] };
