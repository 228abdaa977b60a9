"""A rule-book file is taken whole or refused whole, with the line and what to change."""

from pathlib import Path

import pytest

from core.rulebooks import (
    RuleBookError,
    builtin_ids,
    describe,
    load_books,
    parse_book,
    read_book,
    template,
)

GOOD = template()


def refused(text: str) -> str:
    with pytest.raises(RuleBookError) as caught:
        parse_book(text, "mine.toml")
    return str(caught.value)


def line_with(text: str, part: str) -> int:
    return next(n for n, line in enumerate(text.splitlines(), 1) if part in line)


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("from = 26, to = 40", "from = 27, to = 40", "rows leave a gap: after a row up to 25"),
        ("from = 26, to = 40", "from = 25, to = 40", "rows overlap"),
        ("{ from = 1, to = 25", "{ from = 3, to = 25", "the first row starts at 3: start it at 1"),
        ("from = 41, to = 60, days = 2", "from = 41, to = 60, days = 0", "owes fewer days (0)"),
        ("{ from = 61, days = 4 }", "{ from = 61, to = 99, days = 4 }", "the table ends at 99"),
        ("max = 90", "max = -1", "max: Input should be greater than or equal to 0"),
        ("max = 90", "maxx = 90", "maxx is not known here: perhaps max"),
        ('cite = "2026 rules, 4.3"', "", "cite is missing: add it"),
        ('bands = ["13 and up"]', 'bands = ["14 and up"]', 'no band is named "14 and up"'),
        ('phases = ["playoffs"]', 'phases = ["finals"]', 'add "finals" to the phases'),
        ("age = [13, 15]", "age = [14, 15]", "no band covers age 13 to 13"),
        ("age = [13, 15]", "age = [12, 15]", "overlap: one pitcher would fall in both"),
        ("age = [13, 15]", "age = [15, 13]", "write the youngest (lowest) first"),
        ("window = { days = 3 }", "window = { days = 3, back = 1 }", "leaves out the day itself"),
        ("window = { days = 3 }", 'window = "season"', "add [season]"),
        ("window = { days = 3 }", 'window = "fortnight"', "write a window as"),
        ("window = { days = 3 }", "window = { months = 3, days = 3 }", "write a window as"),
        ('unit = "days"', 'unit = "innings"', "'innings-begun'"),
        ('verb = "off"', 'verb = "pause"', "pause is no verb: use one of cap, rest, off, advice"),
        ("valid_until = 2026-12-31", "valid_until = 2025-12-31", "comes before valid_from"),
        ('on = "birthday"', 'on = "8-31"', "two digits each"),
        ('on = "birthday"', 'on = "02-30"', "no month has a day 02-30"),
        ("format = 1", "format = 2", "format: 2 is not known: use 1"),
        ("months = 4", "months = 4\nweeks = 3", "give either months or weeks"),
        ('phases = ["regular"] ', 'phases = ["regular", "playoffs"] ', "a second cap on the same"),
        ("age = [13, 15]", "age = 13", "age: write a list in brackets, such as [13, 14]"),
        ("age = [13, 15]", "age = [13]", "age: write a list in brackets, such as [13, 14]"),
        ("age = [13, 15]", 'level = "13u"', 'level: write a list in brackets, such as ["varsity"]'),
        ("age = [13, 15]", 'level = ["13U"]', "level: small letters, digits and dashes only"),
        ('unit = "days"', 'unit = "innings"', "for innings type outs (innings times three)"),
        ('"midnight"', '"4 am"', 'or an hour of 24 such as "04:00", not 4 am'),
        ("[counting]", '[counting]\ntitle = "x"', "title is not known here: it stands above the"),
        ("[counting]", '[counting]\nphases = ["x"]', "phases is not known here: it stands above"),
        ("at_least = 4", "at_least = 4, max = 3", 'it stands in a rule with verb = "cap"'),
        ('"scrimmage"', '"scrimage"', 'no kind of outing is called "scrimage": use one of game,'),
        ('"regular", "playoffs"]', '"playoffs"]', 'phases must name "regular"'),
    ],
)
def test_a_fault_is_named_with_what_to_change(old: str, new: str, message: str) -> None:
    assert GOOD.count(old) >= 1

    said = refused(GOOD.replace(old, new, 1))

    assert said.startswith("mine.toml was not taken. Line ")
    assert message in said


@pytest.mark.parametrize(
    ("old", "new", "at"),
    [
        ("max = 90", "max = -1", "max = -1"),
        ("from = 26, to = 40", "from = 26, too = 40", "too = 40"),
        ('bands = ["13 and up"]', 'bands = ["14 and up"]', '"14 and up"'),
        ("age = [13, 15]", "age = [14, 15]", "age = [14, 15]"),
        ('on = "birthday"', 'on = "8-31"', '"8-31"'),
        ("{ from = 61, days = 4 }", "{ from = 61, to = 99, days = 4 }", "to = 99"),
        ('title = "My League" ', "title = 7 ", "title = 7"),
    ],
)
def test_a_fault_is_named_with_its_line(old: str, new: str, at: str) -> None:
    text = GOOD.replace(old, new, 1)

    assert f"Line {line_with(text, at)}: " in refused(text)


def test_a_band_without_a_limit_is_refused() -> None:
    head, *rules = GOOD.split("[[rule]]")
    told = [rule for rule in rules if 'verb = "off"' in rule or 'verb = "advice"' in rule]

    said = refused(head + "".join("[[rule]]" + rule for rule in told))

    assert 'band "13 and up" has no cap and no rest on pitching in playoffs' in said
    assert "no rule is never no limit" in said


def test_every_fault_is_told_at_once() -> None:
    said = refused(GOOD.replace("max = 90", "max = -1").replace('verb = "off"', 'verb = "x"'))

    assert said.count("Line ") == 2


def test_broken_toml_names_its_line() -> None:
    assert "is no valid TOML" in refused(GOOD.replace("format = 1", "format ="))
    assert "line 1" in refused("format =\n")


def test_an_unknown_book_names_the_nearest() -> None:
    with pytest.raises(RuleBookError, match="did you mean pitch-smart"):
        load_books(["pitch-smrt"])


def test_no_book_at_all_is_an_error() -> None:
    with pytest.raises(RuleBookError, match="no rule book is named"):
        load_books([])


def test_a_book_is_found_by_path_and_by_name_in_a_folder(tmp_path: Path) -> None:
    path = tmp_path / "my-league.toml"
    path.write_text(GOOD, encoding="utf-8")

    by_path = load_books([str(path)])
    by_name = load_books(["my-league", "my-league.toml", "pitch-smart"], tmp_path)

    assert [book.id for book in by_path] == ["my-league"]
    assert [book.id for book in by_name] == ["my-league", "my-league", "pitch-smart"]


def test_a_file_that_cannot_be_read_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "latin.toml"
    path.write_bytes("title = 'Señores'".encode("latin-1"))

    with pytest.raises(RuleBookError, match="cannot be read as UTF-8"):
        read_book(path)


@pytest.mark.parametrize("name", builtin_ids())
def test_every_built_in_book_is_named_after_its_id_and_cites_every_rule(name: str) -> None:
    (book,) = load_books([name])

    assert book.id == name
    assert book.source.startswith("http")
    assert all(rule.cite and rule.certainty for rule in book.rule)


@pytest.mark.parametrize("name", builtin_ids())
def test_a_built_in_book_is_told_back_with_every_band_and_rule(name: str) -> None:
    (book,) = load_books([name])

    told = describe(book)

    assert all(f"\n{band.name} (" in told for band in book.band)
    assert all(rule.cite in told for rule in book.rule)
    assert all(gap in told for gap in book.gaps)
