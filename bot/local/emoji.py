"""Emoji names that reactions may use.

The short names are those of Slack's standard set, from memory and far from all of it;
`Workspace.add_emoji` adds one, as uploading a custom emoji does.
"""

from typing import Final

STANDARD: Final = frozenset(
    """
    +1 -1 thumbsup thumbsdown ok_hand clap wave raised_hands pray muscle point_up point_right
    point_left point_down raised_hand hand speech_balloon thought_balloon left_speech_bubble
    white_check_mark heavy_check_mark ballot_box_with_check x negative_squared_cross_mark
    question grey_question exclamation grey_exclamation bangbang interrobang warning no_entry
    no_entry_sign octagonal_sign stop_sign construction rotating_light sos
    eyes eye ear brain bone mechanical_arm adhesive_bandage stethoscope hospital ambulance
    face_with_thermometer face_with_head_bandage thinking_face thinking confused cry smile
    slightly_smiling_face neutral_face grin joy sweat_smile wink blush sunglasses partying_face
    zipper_mouth_face shushing_face lock unlock key shield bell no_bell mute speaker
    baseball softball bat cap stadium trophy medal first_place_medal dart target fire star star2
    sparkles zap boom 100 tada rocket seedling herb sunny cloud umbrella snowflake
    zzz sleeping bed hourglass hourglass_flowing_sand stopwatch timer_clock alarm_clock clock1
    calendar date spiral_calendar_pad tear_off_calendar memo pencil pencil2 notebook clipboard
    page_facing_up bar_chart chart_with_upwards_trend chart_with_downwards_trend abacus
    mag mag_right bulb gear wrench hammer link paperclip pushpin round_pushpin bookmark label
    inbox_tray outbox_tray envelope email telephone_receiver iphone computer camera
    arrow_up arrow_down arrow_right arrow_left arrows_counterclockwise repeat rewind
    leftwards_arrow_with_hook arrow_right_hook back soon recycle curly_loop loop cyclone dizzy
    zero one two three four five six seven eight nine keycap_ten 1234 hash
    red_circle large_orange_circle large_yellow_circle large_green_circle large_blue_circle
    large_purple_circle white_circle black_circle radio_button large_red_square
    white_large_square black_large_square wastebasket ghost robot_face bust_in_silhouette
    busts_in_silhouette family handshake heart information_source heavy_plus_sign
    heavy_minus_sign hand_with_index_finger_and_thumb_crossed raised_hand_with_fingers_splayed
    ice_cube battery low_battery traffic_light vertical_traffic_light triangular_flag_on_post
    checkered_flag crossed_flags
    """.split()
)
