"""Patterns over symbols."""

from core.reading.pattern import code, compile_pattern, needed_symbols


def line(*symbols: str) -> str:
    return "".join(code(symbol) for symbol in symbols)


def test_a_pattern_names_symbols_and_captures_items() -> None:
    match = compile_pattern("<n:num> adj* <u:curve|slider>").search(line("num", "adj", "slider"))

    assert match is not None
    assert (match.start("n"), match.start("u")) == (0, 2)


def test_a_rule_needs_a_symbol_of_each_part_the_rarest_first() -> None:
    needed = needed_symbols(compile_pattern("(a|b)* num (a)? faced (?! sat)").pattern)

    assert needed == (frozenset({code("faced")}), frozenset({code("num")}))


def test_of_alternatives_a_rule_needs_one() -> None:
    either = needed_symbols(compile_pattern("faced num | num sat").pattern)

    assert either == (frozenset({code("faced"), code("sat")}),)
    assert needed_symbols(compile_pattern("(a|b)*").pattern) == ()
    assert needed_symbols(compile_pattern("any | num").pattern) == ()
