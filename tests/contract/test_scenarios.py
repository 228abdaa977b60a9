"""The bad days of a Slack app, and the tests that hold each of them.

The list is this project's own, made from Slack's documentation (docs.slack.dev: Events API,
Socket Mode, rate limits, interactivity, modals, verifying requests, Marketplace guidelines)
and from what is reported of real traffic. Names are files and tests of this folder, or of
`tests/faults` and `tests/bot/outbox` where these stand in front. What concerns a payload of
Slack's runs over signed HTTP and over Socket Mode; signatures exist over HTTP alone.
"""

import ast
from pathlib import Path

import pytest

TESTS = Path(__file__).parents[1]

SCENARIOS: dict[int, tuple[str, dict[str, list[str]]]] = {
    1: (
        "one event in two processes at once: one entry, one answer",
        {
            "contract/test_redelivery.py": [
                "test_the_same_event_twice_is_one_entry_and_one_answer",
                "test_the_same_events_at_once_in_two_processes_are_one_entry_each",
                "test_the_same_event_in_many_processes_at_once_is_one_entry",
            ]
        },
    ),
    2: (
        "a first delivery that stalls, then its retry; acks while the database or Slack is slow",
        {
            "contract/test_deliveries.py": [
                "test_a_first_delivery_that_stalls_and_its_retry_are_one_entry"
            ],
            "contract/test_redelivery.py": [
                "test_a_locked_database_answers_within_slacks_three_seconds_and_stores_later",
                "test_a_database_that_fails_at_commit_gives_no_200_and_slack_sends_again",
                "test_a_database_that_fails_at_commit_gives_no_ack_on_a_socket",
            ],
            "contract/test_refused.py": ["test_acks_do_not_wait_for_a_slack_that_does_not_answer"],
        },
    ),
    3: (
        "killed at each point around the ack: the entry exists once after the restart",
        {
            "faults/test_killed.py": [
                "test_killed_before_commit_slack_sends_again",
                "test_killed_after_commit_before_the_ack_the_redelivery_changes_nothing",
                "test_killed_after_the_ack_what_is_owed_is_sent_by_the_next_process",
                "test_killed_while_slack_had_it_already_nothing_is_seen_twice",
            ],
            "faults/test_stopped.py": ["test_a_line_under_way_is_stored_or_sent_again"],
        },
    ),
    4: (
        "an edit corrects the entry, keeps the audit, changes the one answer",
        {
            "contract/test_deliveries.py": [
                "test_an_edit_corrects_the_entry_keeps_the_audit_and_changes_the_one_answer"
            ],
            "contract/test_conversations.py": ["test_an_edit_corrects_the_answer_in_place"],
        },
    ),
    5: (
        "an edit before its original",
        {
            "contract/test_redelivery.py": [
                "test_an_edit_before_its_original_stands",
                "test_edits_in_the_wrong_order_end_in_the_newest",
            ]
        },
    ),
    6: (
        "a link preview",
        {"contract/test_redelivery.py": ["test_a_link_preview_changes_nothing"]},
    ),
    7: (
        "a deletion, with replies and without, and the line typed again",
        {
            "contract/test_redelivery.py": [
                "test_a_deleted_line_with_replies_leaves_a_tombstone_and_the_record",
                "test_a_deletion_before_its_original_is_final",
            ],
            "contract/test_deliveries.py": [
                "test_a_line_deleted_before_it_was_answered_is_answered_to_nobody",
                "test_a_deletion_heard_twice_voids_once_and_the_line_typed_again_counts",
            ],
        },
    ),
    8: (
        "an edit of a reply in a thread",
        {"contract/test_redelivery.py": ["test_an_edit_of_a_reply_corrects_the_reply"]},
    ),
    9: (
        "messages of other programs, and the bot's own in every shape",
        {
            "contract/test_events.py": [
                "test_other_programs_log_nothing",
                "test_the_bots_own_messages_log_nothing",
            ],
            "contract/test_deliveries.py": [
                "test_a_message_that_another_program_replaced_is_nothing"
            ],
        },
    ),
    10: (
        "pictures with a caption and without",
        {
            "contract/test_texts.py": [
                "test_the_caption_of_a_picture_is_read",
                "test_a_picture_without_words_is_kept_and_answered_once",
                "test_an_emoji_alone_is_kept_and_answered_once",
            ]
        },
    ),
    11: (
        "a mention comes twice, in either order",
        {
            "contract/test_events.py": [
                "test_a_mention_comes_twice_and_is_answered_once",
                "test_a_mention_heard_in_the_other_order_is_answered_once",
            ]
        },
    ),
    12: (
        "long lines, long notes, long lists",
        {
            "contract/test_texts.py": [
                "test_forty_thousand_characters_are_acknowledged",
                "test_a_line_over_four_thousand_characters_is_kept_whole_and_not_read",
            ],
            "contract/test_limits.py": [
                "test_whatever_is_asked_or_listed_fits_into_slacks_limits",
                "test_a_hundred_and_twenty_outings_are_summed_up_and_looked_up",
            ],
            "contract/test_monday_summary.py": [
                "test_more_than_twenty_pitchers_go_on_in_the_thread"
            ],
        },
    ),
    13: (
        "names in any script, with signs that nobody sees; cuts between characters",
        {
            "contract/test_limits.py": [
                "test_a_name_is_the_same_however_it_is_written",
                "test_a_number_with_an_invisible_sign_in_it_is_one_number",
                "test_a_long_name_is_cut_between_characters_as_people_see_them",
            ],
            "contract/test_texts.py": ["test_a_name_comes_out_inert"],
        },
    ),
    14: (
        "mentions, links and formatting in what people type come out inert",
        {
            "contract/test_texts.py": [
                "test_words_quoted_back_come_out_inert",
                "test_a_text_with_escaped_characters_is_stored_as_typed",
                "test_text_that_no_database_takes_is_stored_all_the_same",
            ]
        },
    ),
    15: (
        "429 with Retry-After",
        {
            "contract/test_refused.py": [
                "test_a_429_holds_the_method_for_as_long_as_slack_says_and_nothing_else"
            ],
            "bot/outbox/test_failures.py": [
                "test_a_rate_limit_is_waited_out_and_then_exactly_one_message_goes",
                "test_a_rate_limit_without_a_wait_waits_a_second",
            ],
        },
    ),
    16: (
        "5xx, HTML, a dropped connection, a call that hangs",
        {
            "contract/test_refused.py": [
                "test_whatever_breaks_one_answer_stands_and_the_tries_are_bounded"
            ],
            "bot/outbox/test_failures.py": [
                "test_after_an_unknown_outcome_one_message_stands",
                "test_an_outage_of_a_day_loses_no_message",
            ],
            "faults/test_storm.py": ["test_each_message_stands_once_with_its_newest_words"],
            "faults/test_stopped.py": ["test_a_call_that_never_comes_back_keeps_no_process"],
        },
    ),
    17: (
        "the token is revoked, the app is uninstalled, installed again",
        {
            "contract/test_leaving.py": [
                "test_sends_stop_at_once_and_the_day_of_deletion_is_put_down",
                "test_told_twice_the_day_stays",
                "test_no_schedule_falls_due_any_more",
                "test_after_fourteen_days_no_row_of_the_workspace_is_left",
                "test_a_start_with_a_token_that_works_lifts_all_of_it",
                "test_a_token_that_is_found_dead_stops_sends_and_no_crash_follows",
                "test_installed_anew_after_the_deletion_it_begins_with_nothing",
            ]
        },
    ),
    18: (
        "an account is closed, and opened again",
        {
            "contract/test_leaving.py": [
                "test_a_closed_account_is_written_to_no_more_and_its_record_stays",
                "test_an_account_that_is_opened_again_is_written_to_again",
                "test_the_answer_of_a_line_that_is_owed_to_a_closed_account_is_given_up",
            ],
            "contract/test_unreached.py": [
                "test_a_guardian_whom_slack_does_not_reach_is_named_to_the_staff"
            ],
        },
    ),
    19: (
        "a channel is archived, left, gone or closed to the bot",
        {
            "contract/test_refused.py": [
                "test_a_staff_channel_that_takes_nothing_is_told_once_with_what_helps",
                "test_trouble_that_was_over_and_comes_back_is_told_again",
                "test_a_log_channel_that_the_bot_was_removed_from_is_told_to_the_coach",
            ],
            "contract/test_unreached.py": [
                "test_a_report_that_the_staff_channel_does_not_take_goes_to_the_coach"
            ],
        },
    ),
    20: (
        "a direct message is refused",
        {
            "contract/test_refused.py": [
                "test_a_direct_message_that_is_refused_is_recorded_and_not_repeated"
            ]
        },
    ),
    21: (
        "requests that are not Slack's, or not now",
        {
            "contract/test_bad_requests.py": [
                "test_a_request_from_another_time_is_refused",
                "test_a_timestamp_that_is_no_number_is_refused",
                "test_a_request_without_its_headers_is_refused",
                "test_a_signature_by_another_secret_is_refused",
                "test_a_good_signature_over_another_body_is_refused",
                "test_a_body_that_is_no_slack_payload_is_refused",
                "test_a_body_of_five_megabytes_is_not_read",
                "test_a_refused_body_is_in_no_log",
            ]
        },
    ),
    22: (
        "an exact replay of an event, a press, a submission",
        {
            "contract/test_deliveries.py": [
                "test_the_exact_bytes_of_an_event_sent_again_have_no_second_effect",
                "test_a_form_submitted_twice_is_saved_once",
            ],
            "contract/test_replays.py": [
                "test_an_exact_replay_of_a_press_changes_nothing_more",
                "test_undone_twice_is_undone_once",
            ],
            "contract/test_command.py": ["test_a_command_that_comes_twice_is_one_line"],
        },
    ),
    23: (
        "bad values in a form, sent twice, a trigger that ran out",
        {
            "contract/test_deliveries.py": [
                "test_bad_values_are_answered_at_their_own_blocks_and_the_form_stays",
                "test_a_button_pressed_too_late_says_how_to_go_on",
            ],
            "contract/test_forms.py": [
                "test_what_cannot_be_is_said_at_the_input_and_nothing_is_saved",
                "test_a_form_sent_twice_is_one_outing",
            ],
            "contract/test_command.py": ["test_a_trigger_that_ran_out_is_told_and_nothing_breaks"],
        },
    ),
    24: (
        "sockets: goodbyes, cuts, refusals, envelopes under way or of an unknown kind",
        {
            "contract/test_sockets.py": [
                "test_after_a_goodbye_the_line_is_opened_anew_and_nothing_is_lost",
                "test_a_line_that_is_cut_is_opened_anew",
                "test_an_envelope_under_way_is_acknowledged_once_or_done_again_safely",
                "test_an_envelope_of_a_kind_that_nobody_knows_is_acknowledged",
                "test_where_slack_refuses_the_line_the_pauses_grow",
            ]
        },
    ),
    25: (
        "two replicas: one digest, one undo, the last valid state; events with no feature",
        {
            "contract/test_monday_summary.py": [
                "test_three_processes_and_one_minute_make_one_summary"
            ],
            "contract/test_redelivery.py": [
                "test_an_edit_and_a_deletion_at_once_in_two_processes_end_in_the_deletion"
            ],
            "contract/test_deliveries.py": [
                "test_undo_pressed_in_two_processes_at_once_is_one_undo"
            ],
            "contract/test_sockets.py": [
                "test_two_replicas_share_the_load_and_store_each_line_once"
            ],
            "contract/test_events.py": ["test_every_subscribed_event_is_acknowledged"],
        },
    ),
}


def written_in(file: str) -> set[str]:
    tree = ast.parse((TESTS / file).read_text())
    return {node.name for node in tree.body if isinstance(node, ast.FunctionDef)}


def test_no_scenario_is_left_out() -> None:
    assert list(SCENARIOS) == list(range(1, 26))


@pytest.mark.parametrize("number", SCENARIOS)
def test_each_test_that_is_named_is_there(number: int) -> None:
    _what, named = SCENARIOS[number]

    assert named
    for file, tests in named.items():
        assert tests
        assert set(tests) <= written_in(file), file
