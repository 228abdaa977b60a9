"""Work that can wait stands back while something from Slack is being answered."""

from threading import Event, Thread

from bot.right_of_way import RightOfWay


def test_work_stands_back_until_all_is_answered() -> None:
    way, answer, gave = RightOfWay(longest=30), Event(), Event()
    began = Event()

    def answering() -> None:
        with way.answering():
            began.set()
            assert answer.wait(30)

    def work() -> None:
        assert way.give()
        gave.set()

    line = Thread(target=answering)
    line.start()
    assert began.wait(30)
    worker = Thread(target=work)
    worker.start()
    assert not gave.is_set()

    answer.set()

    assert gave.wait(30)
    line.join()
    worker.join()


def test_with_nothing_to_answer_work_goes_on_at_once() -> None:
    assert RightOfWay(longest=30).give()


def test_work_does_not_stand_back_for_ever() -> None:
    way = RightOfWay(longest=0)

    with way.answering():
        assert not way.give()


def test_a_failed_answer_holds_nobody_up() -> None:
    way = RightOfWay(longest=0)

    try:
        with way.answering():
            raise ZeroDivisionError
    except ZeroDivisionError:
        pass

    assert way.give()
