//! A reader's ways through the built page, in headless Chromium.
//!
//! `cargo xtask test --only journeys` builds the page and runs them all. While writing one, run it
//! alone against the page already in dist/:
//! `cargo test -p xtask --features journeys --test journeys -- PART_OF_ITS_NAME`
//!
//! A journey is an `async fn` that gets a [`Page`]: a fresh browser profile and a server of its own.
//! It fails by panicking, when it takes longer than a minute, and when it leaves behind an error in
//! the console or a request to another origin that it did not take with [`Page::take_errors`] or
//! [`Page::take_foreign_requests`].

mod access;
mod driver;
mod fallback;
mod first;
mod fit;
mod fit_answers;
mod fit_log;
mod kept;
mod make;
mod offline;
mod order;
mod page;
mod paper;
mod policy;
mod prove;
mod rest;
mod rig;
mod runner;
mod saved;
mod self_test;
mod single;
mod size;
mod unverified;
mod way_back;

use page::{PHONE, Page};
use runner::{Journey, journeys};
use std::process::ExitCode;

fn main() -> ExitCode {
    let all: &[Journey] = &journeys![
        self_test::harness_types_and_looks,
        self_test::harness_notices_trouble,
        opens_with_its_title,
        size::three_entries_give_the_answer,
        size::a_bad_entry_gets_a_sentence,
        size::nothing_is_copied_late,
        size::the_buttons_print_what_the_keys_do,
        size::paper_leaves_the_screen_as_it_was,
        size::sizes_in_sentences_are_whole,
        size::what_is_pressed_stays_until_it_is_let_go,
        size::a_refused_entry_is_not_a_shorter_one,
        size::the_lengths_stand_apart,
        size::a_fraction_is_inches_and_a_k_a_thousand,
        size::one_link_on_paper_and_in_words,
        size::a_shared_link_shows_the_same_answer,
        size::a_keyboard_is_enough,
        prove::a_touched_part_opens_its_working,
        prove::every_outside_value_agrees_here,
        prove::a_changed_assumption_leaves_its_mark,
        make::a_route_is_read_and_printed,
        make::cuts_are_planned_and_remnants_kept,
        make::a_piece_is_recorded,
        make::each_sheet_is_one_page,
        paper::the_quote_on_paper,
        paper::the_cut_plan_on_paper,
        paper::the_certificate_on_paper,
        paper::a_welded_tube_is_one_page,
        fit::six_places_are_one_tap_away,
        fit_log::a_log_stays_with_its_build,
        fit_log::two_tabs_share_a_log,
        fit_log::a_link_can_carry_the_log,
        fit::the_card_is_one_page,
        fit::the_owner_asks_whether_it_is_safe,
        fit::the_owner_makes_it_longer,
        fit::the_owner_lifts_the_pinion,
        fit::the_owner_hit_a_rock,
        fit::nothing_is_judged_by_what_cannot_be_read,
        fit::ticks_and_rechecks_are_kept,
        fit_answers::both_bars_of_a_pair_go_into_the_log,
        fit_answers::a_slope_is_typed_once_for_an_axle,
        fit_answers::a_rod_end_is_entered_where_it_is_missing,
        fit_answers::a_hit_takes_the_good_word_everywhere,
        make::builds_are_cut_together,
        make::make_on_a_phone,
        way_back::views_and_places_are_steps_of_the_way_back,
        way_back::the_way_back_from_a_link_leads_to_ones_own,
        rig::an_eight_link_rig_by_keyboard,
        rig::one_link_after_the_other,
        rig::links_are_copied_and_taken_away,
        rig::every_step_can_be_undone,
        order::a_phone_order_by_keyboard,
        order::a_shop_keeps_its_lists,
        order::two_tabs_edit_one_list,
        saved::builds_are_kept_and_compared,
        saved::a_button_pressed_after_a_name_is_pressed,
        saved::undoing_an_opening_returns_to_the_build_before,
        saved::builds_leave_and_return_as_a_file,
        saved::a_received_build_is_a_copy,
        saved::the_code_is_the_link,
        saved::two_tabs_agree_or_ask,
        saved::a_build_saved_elsewhere_is_not_written_over,
        saved::what_cannot_be_kept_is_told,
        kept::a_tab_that_comes_back_late_overwrites_nothing,
        kept::quick_steps_beside_another_tab_all_count,
        kept::what_was_set_aside_and_brought_back_stays,
        kept::a_full_store_loses_nothing,
        kept::unverified_numbers_stay_so_until_compared,
        kept::a_damaged_earlier_version_says_so,
        kept::many_builds_in_one_tick_all_arrive,
        kept::an_address_that_brings_nothing_changes_nothing,
        kept::a_keyboard_deletes_for_good,
        kept::old_bookmarks_and_old_names_are_known,
        kept::what_was_just_typed_comes_first,
        unverified::unverified_numbers_are_marked_wherever_they_go,
        unverified::a_link_sent_on_says_so_too,
        unverified::damaged_entries_are_set_aside_as_such,
        unverified::an_offer_that_is_closed_leaves_the_bin,
        unverified::going_back_in_one_tab_leaves_the_other,
        unverified::room_again_keeps_the_entries,
        unverified::rescued_entries_come_back_from_any_editor,
        unverified::what_is_in_the_bin_is_not_saved,
        access::every_view_can_be_heard,
        access::twice_the_letters_still_fit,
        offline::a_second_visit_needs_no_network,
        offline::a_newer_build_waits_for_a_yes,
        offline::a_broken_newer_build_is_refused,
        offline::below_a_path_beside_another_copy,
        rest::the_part_comes_before_it_is_asked_for,
        rest::a_rig_asks_for_both_parts_together,
        rest::every_view_opens_without_a_network,
        rest::a_part_that_does_not_come_is_told_and_tried_again,
        rest::a_late_part_leaves_the_reader_alone,
        first::the_first_screen_is_the_live_page,
        first::the_program_takes_over_without_a_jump,
        first::what_is_done_before_the_program_counts,
        first::a_link_shows_no_empty_form_first,
        policy::nothing_foreign_runs_or_is_asked_for,
        single::one_file_opens_from_a_folder,
        single::a_damaged_file_says_so,
        fallback::without_scripts_the_page_says_so,
        fallback::without_webassembly_entries_can_be_taken_along,
        fallback::a_program_that_stops_gives_everything_back,
        fallback::the_empty_form_after_a_stop_is_new_work,
        fallback::a_stranger_s_mistake_changes_nothing,
        fallback::a_part_that_does_not_arrive_can_be_tried_again,
        rest::an_altered_program_is_refused,
        fallback::hasty_fingers_stop_nothing,
    ];
    runner::run(all)
}

async fn opens_with_its_title(page: &Page) {
    page.open(PHONE, "").await;
    let title = page.title().await;
    assert!(title.contains("Linkwright"), "the title is {title:?}");
}
