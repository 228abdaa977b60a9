"""Patterns over symbols."""

from core.reading.pattern import code, compile_pattern, needed_symbols


def line(*symbols: str) -> str:
    return "".join(code(symbol) for symbol in symbols)


def test_a_pattern_names_symbols_and_captures_items() -> None:
    match = compile_pattern("<n:num> adj* <u:curve|slider>").search(line("num", "adj", "slider"))

    assert match is not None
    assert (match.start("n"), match.start("u")) == (0, 2)


def test_a_rule_needs_its_rarest_symbols() -> None:
    needed = needed_symbols(compile_pattern("(a|b)* faced (a)? num").pattern)

    assert needed in ({code("faced")}, {code("num")})
    assert needed_symbols(compile_pattern("faced | num").pattern) == {code("faced"), code("num")}
    assert needed_symbols(compile_pattern("(a|b)*").pattern) == frozenset()
