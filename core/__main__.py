"""`python -m core read` and `python -m core rest`: lines of JSON in, lines of JSON out."""

import sys
from collections.abc import Callable, Iterable

USAGE = "usage: python -m core read | rest    (one JSON object per line on standard input)"


def _filter(name: str) -> Callable[[Iterable[str]], Iterable[str]] | None:
    """The named line filter, imported only when asked for: the reader must start fast."""
    if name == "read":
        from core.reading.jsonl import read_lines

        return read_lines
    if name == "rest":
        from core.rest.jsonl import rest_lines

        return rest_lines
    return None


def main(arguments: list[str]) -> int:
    """Run the filter named by the only argument over standard input; 2 when it is no such name."""
    chosen = _filter(arguments[0]) if len(arguments) == 1 else None
    if chosen is None:
        sys.stderr.write(USAGE + "\n")
        return 2
    for line in chosen(sys.stdin):
        sys.stdout.write(line + "\n")
        sys.stdout.flush()
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
