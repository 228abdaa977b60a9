from tests.support.workspace import app_host, hands, stand_in, ws

__all__ = ["app_host", "hands", "stand_in", "ws"]
