/// What the program can be told to do: one table that feeds the menus, the keys and the key list.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sparewell::desk {

enum class Command {
  open_file,
  new_file,
  import_folder,
  clinic_details,
  undo,
  print_page,
  quit,
  write_orders,
  mark_as_sent,
  play_policy,
  compare_decisions,
  held_back,
  suppliers,
  issue_part,
  end_part,
  book_parts,
  cancel_booking,
  patient_place,
  check_trip,
  findings,
  everyones_findings,
  other_items,
  decide_part,
  note_sensitivity,
  note_substance,
  parts_list,
  record_measurement,
  show_fit,
  record_reaction,
  reactions,
  reaction_healed,
  sheet_again,
  sheet_signed,
  stock_move,
  stock_quarantine,
  stock_write_off,
  stock_return,
  stock_lend,
  stock_settle,
  stock_reverse,
  stock_places,
  constituents,
  branch_moves,
  send_moves,
  receive_delivery,
  place_order,
  approve_order,
  amend_line,
  back_order,
  cancel_order,
  reprint_order,
  test_forecasts,
  wear_effects,
  wear_early,
  compare_books,
  answer_finding,
  finding_patient,
  note_paper,
  read_claims,
  read_payments,
  payer_rules,
  billing_reports,
  close_month,
  month_changes,
  stock_list,
  count_sheet,
  enter_count,
  month_forecast,
  price_list,
  recall,
  visit_sheets,
  page_today,
  search_everything,
  page_orders,
  page_patients,
  page_shelf,
  page_wear,
  page_plan,
  page_deliveries,
  page_billing,
  find,
  refresh,
  larger_text,
  smaller_text,
  usual_text,
  usual_columns,
  choose_ways,
  help,
  keys,
  about
};

enum class Menu { file, orders, patients, shelf, wear, billing, lists, view, help };

/// What decides whether a command can be used now.
struct CommandState {
  bool file_open = false;
  bool busy = false;  ///< a job is under way
  bool anything_to_order = false;
  bool drafts = false;       ///< orders written and not yet sent
  bool patient = false;      ///< the page "Patients" is shown and a patient is chosen on it
  bool part = false;         ///< the same of a part in use
  bool issued = false;       ///< the same of a part in use or not
  bool booked = false;       ///< a patient is chosen, and something is booked for them
  bool against = false;      ///< a finding of a sensitivity is chosen that can be decided about
  bool other_items = false;  ///< a part in use, or a finding about one, is chosen
  bool lot = false;          ///< the page "Shelf" is shown and a lot is chosen on it
  bool item = false;         ///< the same of an item
  bool away = false;         ///< the same of something that is away and has to be settled
  bool branches = false;     ///< the clinic has several stores
  bool move = false;         ///< moves between them are shown on the page "Shelf" and one is chosen
  // What can be done with the order that is chosen on the page "Deliveries".
  bool order_placeable = false;
  bool order_approvable = false;
  bool order_amendable = false;
  bool order_to_come = false;
  bool order_cancellable = false;
  bool order_reprintable = false;
  bool finding = false;               ///< the page "Billing" is shown and a finding is chosen on it
  bool finding_with_patient = false;  ///< the same of one about a patient
  bool paper = false;                 ///< a part is chosen whose papers can be noted, here or there
  bool undoable = false;              ///< something was done in this run that can be taken back
  bool printable = false;             ///< the page that is shown has a list to print
};

struct CommandSpec {
  Command command;
  Menu menu;
  std::string_view label;  ///< with '&' before its mnemonic; "..." when it asks for more
  std::string_view key;    ///< "Ctrl+O", "F5"; "" for none
  std::string_view help;   ///< one sentence
  bool (*enabled)(const CommandState&);
  bool starts_group = false;  ///< a line stands above it in its menu
};

/// In the language of the program.
[[nodiscard]] std::vector<CommandSpec> command_table();
[[nodiscard]] CommandSpec command_spec(Command command);
/// "&File", in the language of the program.
[[nodiscard]] std::string_view menu_title(Menu menu);
/// The label without mnemonic and dots.
[[nodiscard]] std::string plain_label(const CommandSpec& spec);

/// Key and meaning, as the key list shows them; keys that work inside lists and boxes included.
struct KeyLine {
  std::string key;
  std::string meaning;
};
[[nodiscard]] std::vector<KeyLine> key_list();

}  // namespace sparewell::desk
