from tests.support.team_files import club

__all__ = ["club"]
