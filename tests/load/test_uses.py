"""Uses found in the model are the ones that the files' text has, one for one."""

from pathlib import Path

from basinside import files
from basinside.load.content import load_whole
from basinside.load.mentions import mentions_in
from basinside.load.uses import Uses
from basinside.model.words import ALL_LISTS
from tests.built import CHECKOUT


def test_every_value_in_a_sentence_is_found_in_its_file_and_no_other() -> None:
    raw = files.read_authored(Path(CHECKOUT))
    loaded = load_whole(raw)
    uses = Uses(loaded.content, loaded.named, ())
    written = {
        (mention.figure, file)
        for file, text in raw.items()
        if file.endswith(".yaml")
        for mention in mentions_in(text.decode())
    }
    found = {
        (name, use.place.file)
        for name in loaded.content.figures
        for meant in uses.meant(name)
        if meant.kind == "value"
        for use in uses.of(meant)
        if use.prose
    }
    assert len(written) > 100
    assert written <= found
    by_variants = {file for _, file in found - written}
    assert all(b"variant_of" in raw[file] for file in by_variants)


def test_every_id_that_is_named_has_that_use() -> None:
    loaded = load_whole(files.read_authored(Path(CHECKOUT)))
    uses = Uses(loaded.content, loaded.named, ())
    places = {
        meant: {use.place for use in uses.of(meant)}
        for several in uses.known.values()
        for meant in several
        if meant.kind != "word"
    }
    unknown = set()
    for named in dict.fromkeys(each for some in loaded.named for each in some):
        meant = [each for each in uses.meant(named.id) if each.id == named.id]
        if not any(named.place in places.get(each, ()) for each in meant):
            unknown.add((named.kind, named.id))
    families = {named for kind, named in unknown if kind == "chemical or family"}
    assert unknown <= {("chemical or family", each) for each in families} | {
        ("scope or procedure", "all")
    }
    assert families <= set(ALL_LISTS["family"])
