"""The authors' pages of problems that are no rule's: of form, of files, and of waivers."""

from __future__ import annotations

from typing import Final

FORM_PAGES: Final[dict[str, str]] = {
    "alias-or-tag": """\
No aliases, anchors or tags.

Why: `*` and `&` make one line stand for another and `!` changes what a word means, so that nobody
can read the file aloud.
Bad: `hold: *usual`
Good: `hold: {figure: boil.hold}`""",
    "bad-id": """\
Ids are lower-case words with hyphens; ids of values have dots between words.

Why: an id becomes the name of a file and of a page, and is never changed again.
Bad: `part: Leaf_Valve`
Good: `part: leaf-valve` with `name: leaf valve`""",
    "bad-value": """\
A value is written as its field asks: a number with its unit, a day, yes or no, a reference.

Why: a bare 20 may be minutes or seconds, and a guess may hurt somebody.
Bad: `value: 20`
Good: `value: 20 min`""",
    "file-empty": """\
A file holds something.

Why: an empty file is often one whose saving failed.
Good: write the entry, or delete the file.""",
    "file-misplaced": """\
Every file lies where it is read.

Why: a procedure in the wrong folder would be missing from the handbook without a word.
Bad: `content/boiling.yaml`
Good: `content/figures/boiling.yaml`""",
    "file-missing": """\
The files that every handbook needs are there.

Why: content/handbook.yaml says whose handbook it is and which edition.
Good: `basinside new FOLDER` makes a folder that has them.""",
    "file-name": """\
A file is named after the id in it.

Why: whoever looks for an id finds its file.
Bad: `procedure: bag-mask-boil` in boiling.yaml
Good: the same in bag-mask-boil.yaml""",
    "file-unreadable": """\
Files are UTF-8 text of a sensible size, and machine files are as the program wrote them.

Why: other encodings turn °C and é into something else on the next machine.
Good: choose UTF-8 in your editor's “save as”.""",
    "missing-key": """\
A key that every entry of this kind needs is there.

Why: a part without `touches` cannot be given a level.
Good: write the key that is named; the schema in your editor shows what it holds.""",
    "picture-refused": """\
Drawings hold lines, shapes, words and ids, and nothing that acts or loads.

Why: a drawing becomes part of the page, where a script or an address from outside must not be.
Bad: a style sheet, a script, a photo inside the SVG, `url(...)`
Good: plain shapes with `fill` and `stroke`, saved as plain SVG""",
    "repeated-id": """\
An id is used once within its kind, whatever its case.

Why: with two of them nobody knows which one a page or a record means.
Good: keep one, and give the other an id of its own.""",
    "repeated-key": """\
A key stands once in an entry.

Why: most programs would silently keep the last one.
Bad: two lines `hold:` in one step
Good: one of them""",
    "sentence-cut": """\
A sentence is written so that YAML does not cut it.

Why: inside braces a comma begins a new key, inside brackets a new entry, and everything after
“ #” is a comment. The rest of the sentence would be lost.
Bad: `{do: Close the lid, then wait}`
Good: the sentence on a line of its own; where needed on the line after `>-`""",
    "unknown-id": """\
What an entry names is there.

Why: a step that names a value, chemical or tool that does not exist would show a gap.
Bad: `hold: {figure: boil.hodl}`
Good: `hold: {figure: boil.hold}`""",
    "unknown-key": """\
Keys are those of the format.

Why: a mistyped key would be passed over, and what it says would be missing from the page.
Bad: `saftey: yes`
Good: `safety: yes`""",
    "unknown-word": """\
Where a list of words is fixed, the word is one of it.

Why: rules and levels read these words.
Bad: `touches: [mucosa]`
Good: `touches: [mucous membrane]`""",
    "value-missing": """\
A key has a value.

Why: nobody can tell whether it was forgotten or meant to be empty.
Bad: `source:`
Good: write the value, or delete the key""",
    "waiver-ended": """\
A waiver counts until its last day; with `--today`, one that has ended stops.

Why: what two people allowed for a while is looked at again.
Good: mend what it waived; or two people decide again and write `on:` and `until:` anew.""",
    "waiver-incomplete": """\
A waiver has a reason, two different people, the day, and a last day.

Why: a rule of safety is set aside by nobody alone and by nobody for ever.
Bad: `waive: [{rule: source-missing, because: ..., by: midwife, on: 2026-09-20}]`
Good: besides, `second: infection-prevention lead` and `until: 2027-03-20`""",
    "waiver-of-never": """\
Some rules cannot be waived, nor can a mistake of form.

Why: gas, a vessel that stays too cool, or an item for single use cannot be agreed upon.
Good: mend what the rule found, and delete the waiver.""",
    "waiver-unknown-rule": """\
A waiver names a rule by its id.

Why: with another word it would set nothing aside, and look as if it did.
Bad: `rule: no source`
Good: `rule: source-missing`""",
    "waiver-without-effect": """\
A waiver that sets nothing aside is deleted.

Why: it would hide the next mistake at the same place.
Good: delete it.""",
    "wrong-shape": """\
A field holds what its kind asks for: a sentence, keys with values, or a list.

Bad: `wear: heavy gloves, apron`
Good: `wear: [heavy gloves, apron]`""",
    "yaml-syntax": """\
The file is YAML.

Why: one wrong indent or an unlucky sign can change what the whole file says.
Bad: a sentence with “: ” in it, or one that begins with a quote, `{{`, `*`, `%` or `@`
Good: the sentence on the next line after `>-`; spaces for indents, never tabs""",
}
