"""`python -m bot`: the same as `spinkeeper run`."""

from bot.cli import main

if __name__ == "__main__":
    main(["run"])
