#include "desk/commands.hpp"

#include <algorithm>
#include <array>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

bool always(const CommandState&) {
  return true;
}
bool idle(const CommandState& state) {
  return !state.busy;
}
bool idle_with_file(const CommandState& state) {
  return state.file_open && !state.busy;
}
bool with_file(const CommandState& state) {
  return state.file_open;
}
bool can_write(const CommandState& state) {
  return idle_with_file(state) && state.anything_to_order;
}
bool can_mark(const CommandState& state) {
  return idle_with_file(state) && state.drafts;
}

bool can_issue(const CommandState& state) {
  return idle_with_file(state) && state.patient;
}
bool can_end_part(const CommandState& state) {
  return idle_with_file(state) && state.part;
}
bool can_cancel_booking(const CommandState& state) {
  return can_issue(state) && state.booked;
}
bool can_decide(const CommandState& state) {
  return idle_with_file(state) && state.against;
}
bool can_look_for_others(const CommandState& state) {
  return idle_with_file(state) && state.other_items;
}
bool can_work_on_sheet(const CommandState& state) {
  return idle_with_file(state) && state.issued;
}
bool can_work_on_lot(const CommandState& state) {
  return idle_with_file(state) && state.lot;
}
bool can_work_on_item(const CommandState& state) {
  return idle_with_file(state) && state.item;
}
bool can_settle(const CommandState& state) {
  return idle_with_file(state) && state.away;
}

bool has_branches(const CommandState& state) {
  return idle_with_file(state) && state.branches;
}
bool can_send(const CommandState& state) {
  return idle_with_file(state) && state.move;
}

bool can_place(const CommandState& state) {
  return idle_with_file(state) && state.order_placeable;
}
bool can_approve(const CommandState& state) {
  return idle_with_file(state) && state.order_approvable;
}
bool can_amend(const CommandState& state) {
  return idle_with_file(state) && state.order_amendable;
}
bool can_back_order(const CommandState& state) {
  return idle_with_file(state) && state.order_to_come;
}
bool can_cancel(const CommandState& state) {
  return idle_with_file(state) && state.order_cancellable;
}
bool can_reprint(const CommandState& state) {
  return idle_with_file(state) && state.order_reprintable;
}

bool can_answer(const CommandState& state) {
  return idle_with_file(state) && state.finding;
}
bool can_go_to_patient(const CommandState& state) {
  return state.file_open && state.finding_with_patient;
}
bool can_note_paper(const CommandState& state) {
  return idle_with_file(state) && state.paper;
}

bool can_undo(const CommandState& state) {
  return idle_with_file(state) && state.undoable;
}
bool can_print(const CommandState& state) {
  return state.file_open && state.printable;
}

constexpr std::array<CommandSpec, 89> table{{
    {Command::open_file, Menu::file, "&Open clinic file...", "Ctrl+O", "Open another clinic file",
     idle},
    {Command::new_file, Menu::file, "&New clinic file...", "Ctrl+N", "Make an empty clinic file",
     idle},
    {Command::import_folder, Menu::file, "&Import folder...", "Ctrl+I",
     "Bring a folder of CSV files into the clinic file", idle_with_file, true},
    {Command::clinic_details, Menu::file, "Clinic &details...", "Ctrl+D",
     "Name, delivery address, currency, main place, service target, start of the records",
     idle_with_file},
    {Command::undo, Menu::file, "&Undo", "Ctrl+Z", "Take back what was done last in this run",
     can_undo, true},
    {Command::print_page, Menu::file, "&Print...", "Ctrl+Alt+P",
     "See the list of the page as it would be printed, and print it", can_print},
    {Command::quit, Menu::file, "&Quit", "Ctrl+Q", "Close the program", always, true},
    {Command::write_orders, Menu::orders, "&Write order workbooks...", "Ctrl+W",
     "Write one workbook for each supplier", can_write},
    {Command::mark_as_sent, Menu::orders, "&Mark as sent...", "Ctrl+M",
     "Say which written orders went to their suppliers; they then count as on order", can_mark},
    {Command::play_policy, Menu::orders, said("&Play the policy"), "Ctrl+Y",
     said(
         "See what the order policy saves beside min-max levels and ordering when nothing is left"),
     idle_with_file, true},
    {Command::compare_decisions, Menu::orders, said("What &if"), "Ctrl+Shift+Y",
     said("Set ordering today beside waiting, another target and the loss of a supplier"),
     idle_with_file},
    {Command::held_back, Menu::orders, said("&Held back"), "Ctrl+9",
     said("What is needed and not ordered: for the budget, a sensitivity or a size that no longer "
          "fits"),
     always},
    {Command::suppliers, Menu::orders, said("&Suppliers"), "Ctrl+0",
     said("How suppliers keep the days that they quote, and which orders are late"), always},
    {Command::receive_delivery, Menu::orders, said("&Receive..."), "Ctrl+R",
     said("Scan or type what came, and book it to its order"), idle_with_file, true},
    {Command::place_order, Menu::orders, said("Place &order"), "",
     said("Count the chosen draft as sent to its supplier"), can_place},
    {Command::approve_order, Menu::orders, said("&Approve order..."), "",
     said("Say who approved the chosen order"), can_approve},
    {Command::amend_line, Menu::orders, said("Amend &line..."), "Ctrl+L",
     said("Change, add or drop a line of the chosen order"), can_amend},
    {Command::back_order, Menu::orders, said("&Back-order..."), "",
     said("Note that the supplier sends the rest of a line later"), can_back_order},
    {Command::cancel_order, Menu::orders, said("&Cancel order..."), "",
     said("Cancel what has not come of the chosen order"), can_cancel},
    {Command::reprint_order, Menu::orders, said("Reprint wor&kbook..."), "",
     said("Write the workbook of any revision of the chosen order again"), can_reprint},
    {Command::issue_part, Menu::patients, said("&Issue a part..."), "Ctrl+Shift+I",
     said("Check a part for the chosen patient, and hand it over"), can_issue},
    {Command::end_part, Menu::patients, said("&End this part..."), "Ctrl+Shift+E",
     said("Record that the chosen part is worn out, lost, given back or was issued by mistake"),
     can_end_part},
    {Command::book_parts, Menu::patients, said("&Book parts for a visit..."), "Ctrl+B",
     said("Book pieces that the chosen patient needs on a day, so that they are there"), can_issue,
     true},
    {Command::cancel_booking, Menu::patients, said("&Cancel a booking..."), "Ctrl+Shift+B",
     said("Give up pieces that are booked for the chosen patient"), can_cancel_booking},
    {Command::patient_place, Menu::patients, said("Change &place..."), "",
     said("Say to which branch the chosen patient belongs"), can_issue},
    {Command::check_trip, Menu::patients, said("Check a &trip..."), "Ctrl+K",
     said("See whether the chosen patient's parts last on a trip, and what to pack"), can_issue},
    {Command::findings, Menu::patients, said("Finding&s"), "Ctrl+Shift+F",
     said("What the checks find about what the chosen patient wears"), can_issue, true},
    {Command::everyones_findings, Menu::patients, said("Findings of e&veryone..."), "Ctrl+Shift+J",
     said("Who wears what does not suit: sensitivities, sizes, suspension and lots"),
     idle_with_file},
    {Command::other_items, Menu::patients, said("&Other items..."), "Ctrl+Shift+A",
     said("Which other items could do the work of the chosen part, the most suitable first"),
     can_look_for_others},
    {Command::decide_part, Menu::patients, said("Decide &about it..."), "Ctrl+Shift+O",
     said("Record a clinician's decision about the chosen finding, or withdraw it"), can_decide},
    {Command::note_sensitivity, Menu::patients, said("&Note a sensitivity..."), "Ctrl+Shift+N",
     said("Record what the chosen patient reacts to, and see what speaks against it"), can_issue},
    {Command::note_substance, Menu::patients, said("&Kinds of substances..."), "",
     said("Record how two substances are related, and see who is newly affected"), idle_with_file},
    {Command::parts_list, Menu::patients, said("Parts &list..."), "Ctrl+Shift+K",
     said("Write the list of the chosen patient's parts with their care, to take home"), can_issue},
    {Command::record_measurement, Menu::patients, said("Record a &measurement..."), "Ctrl+U",
     said("Record the circumference of the chosen patient's limb"), can_issue, true},
    {Command::show_fit, Menu::patients, said("&Fit and trend..."), "Ctrl+Shift+U",
     said("See how the chosen patient's limbs change, and until when the sizes worn fit"),
     can_issue},
    {Command::record_reaction, Menu::patients, said("Record a &reaction..."), "Ctrl+H",
     said("Write down a reaction of the chosen patient's skin"), can_issue, true},
    {Command::reactions, Menu::patients, said("Reactions and s&uspects..."), "Ctrl+Shift+H",
     said("Set the chosen patient's reactions beside what was worn, and see what they speak for"),
     can_issue},
    {Command::reaction_healed, Menu::patients, said("A reaction &healed..."), "",
     said("Record the last day of a reaction of the chosen patient's skin"), can_issue},
    {Command::sheet_again, Menu::patients, said("&Delivery sheet again..."), "Ctrl+Shift+D",
     said("Write the delivery sheet of what was handed over with the chosen part again, as a copy"),
     can_work_on_sheet, true},
    {Command::sheet_signed, Menu::patients, said("Si&gned sheet..."), "Ctrl+Shift+G",
     said("Record on which day the patient signed the delivery sheet of the chosen part"),
     can_work_on_sheet},
    {Command::stock_move, Menu::shelf, said("&Move..."), "Ctrl+Shift+M",
     said("Send pieces of the chosen lot to another place"), can_work_on_lot},
    {Command::stock_quarantine, Menu::shelf, said("&Quarantine or release..."), "Ctrl+Shift+Q",
     said("Hold pieces of the chosen lot back, or let them out again"), can_work_on_lot},
    {Command::stock_write_off, Menu::shelf, said("&Write off..."), "Ctrl+Shift+W",
     said("Take expired, damaged or lost pieces of the chosen lot off the books"), can_work_on_lot},
    {Command::stock_return, Menu::shelf, said("&Return to supplier..."), "Ctrl+Shift+R",
     said("Send pieces of the chosen lot back and expect a credit for them"), can_work_on_lot},
    {Command::stock_lend, Menu::shelf, said("&Lend..."), "Ctrl+Shift+L",
     said("Lend pieces of the chosen lot to a patient on trial"), can_work_on_lot},
    {Command::stock_settle, Menu::shelf, said("&Settle what is away..."), "Ctrl+Shift+S",
     said("Record what became of the chosen loan, return or transfer"), can_settle, true},
    {Command::stock_reverse, Menu::shelf, said("&Take a booking back..."), "Ctrl+Shift+T",
     said("Undo a movement of the chosen item that was a mistake"), can_work_on_item},
    {Command::stock_places, Menu::shelf, said("&Places..."), "Ctrl+Shift+P",
     said("Record a place, and say what lying there means"), idle_with_file, true},
    {Command::constituents, Menu::shelf, said("&Constituents..."), "Ctrl+Shift+X",
     said("Change what the chosen item declares, and see who is newly affected"), can_work_on_item},
    {Command::branch_moves, Menu::shelf, said("Moves &between branches"), "Ctrl+G",
     said(
         "What to send from one branch to another, and why; the same again goes back to the items"),
     has_branches},
    {Command::send_moves, Menu::shelf, said("Sen&d moves..."), "Ctrl+Shift+V",
     said("Send the chosen move between branches, or all of them"), can_send},
    {Command::test_forecasts, Menu::wear, said("&Test the forecasts"), "Ctrl+T",
     said("Replay the clinic's own history and see how good the forecasts would have been"),
     idle_with_file},
    {Command::wear_effects, Menu::wear, said("What changes &lives"), "Ctrl+5",
     said("How activity, kneeling, hours of wear, sweating and sport change the life of parts"),
     always, true},
    {Command::wear_early, Menu::wear, said("&Early endings"), "Ctrl+6",
     said("Lots and items that may be defective, and parts that wore out far too early"), always},
    {Command::compare_books, Menu::billing, said("&Compare the books"), "F7",
     said("Hold what was handed out, billed, paid, ordered, received and invoiced against one "
          "another"),
     idle_with_file},
    {Command::answer_finding, Menu::billing, said("&Answer..."), "F8",
     said(
         "Say what is decided about the chosen finding: asked, accepted, corrected or written off"),
     can_answer},
    {Command::finding_patient, Menu::billing, said("&Go to the patient"), "",
     said("Show the patient of the chosen finding"), can_go_to_patient},
    {Command::note_paper, Menu::billing, said("&Note a paper..."), "F9",
     said("Put a paper of the chosen part on record: order, reason, condition, cost share"),
     can_note_paper},
    {Command::read_claims, Menu::billing, said("&Read claims..."), "Ctrl+Shift+Z",
     said("Read claims that were sent to payers, from an X12 837P file or a table"), idle_with_file,
     true},
    {Command::read_payments, Menu::billing, said("Read pay&ments..."), "Ctrl+P",
     said("Read what payers answered and paid, from an X12 835 file or a table"), idle_with_file},
    {Command::payer_rules, Menu::billing, said("Payers' r&ules..."), "",
     said("What payers require and pay, with its source; add or change rules"), idle_with_file,
     true},
    {Command::billing_reports, Menu::billing, said("Write re&ports..."), "",
     said("What is unbilled, findings, margins and suppliers' variances, as workbooks"),
     idle_with_file},
    {Command::close_month, Menu::billing, said("C&lose a month..."), "",
     said("Keep the records of a month as they are, with their totals"), idle_with_file, true},
    {Command::month_changes, Menu::billing, said("Changes a&fter closing..."), "",
     said("What was added, taken away or changed in closed months since"), idle_with_file},
    {Command::stock_list, Menu::lists, said("Write &stock list..."), "",
     said("What lies where, with use-by dates and values, as a workbook"), idle_with_file},
    {Command::month_forecast, Menu::lists, said("&Forecast by month..."), "",
     said("Pieces of each item that will be needed month by month, as a workbook"), idle_with_file},
    {Command::count_sheet, Menu::lists, said("Write &count sheet..."), "",
     said("A sheet to fill in at the shelf, what matters most first"), idle_with_file, true},
    {Command::enter_count, Menu::lists, said("&Enter a count..."), "Ctrl+E",
     said("Read a filled-in count sheet, look at the differences and book them"), idle_with_file},
    {Command::price_list, Menu::lists, said("Supplier &price list..."), "",
     said("See what a supplier's price list changes, and take it over"), idle_with_file, true},
    {Command::recall, Menu::lists, said("&Recall..."), "Ctrl+Shift+C",
     said("Who has or had a recalled part, where more of it lies, and taking it out of use"),
     idle_with_file, true},
    {Command::visit_sheets, Menu::lists, said("&Visit sheets..."), "Ctrl+J",
     said("A page for each patient expected on a day: what is near its end, what to have ready"),
     idle_with_file, true},
    {Command::page_today, Menu::view, said("&Today"), "F2",
     said("What needs a person today in ordering, with patients and in billing"), always},
    {Command::page_orders, Menu::view, said("&Order today"), "Ctrl+1",
     said("What to order today, and why"), always},
    {Command::page_patients, Menu::view, said("&Patients"), "Ctrl+2",
     said("Patients, their parts and how long these will last"), always},
    {Command::page_shelf, Menu::view, said("&Shelf"), "Ctrl+3",
     said("What is on hand, what of it counts, and what is on its way"), always},
    {Command::page_wear, Menu::view, said("&Wear"), "Ctrl+4",
     said("How far the forecasts of wear can be trusted"), always},
    {Command::page_plan, Menu::view, said("P&lan"), "Ctrl+8",
     said("What the order policy saves beside common ways of ordering"), always},
    {Command::page_deliveries, Menu::view, said("&Deliveries"), "Ctrl+7",
     said("All orders, what is still to come of them, and receiving it"), always},
    {Command::page_billing, Menu::view, said("&Billing"), "F6",
     said("What does not agree between the books, and what was decided about it"), always},
    {Command::search_everything, Menu::view, said("Search &everything"), "F3",
     said("Find a patient, item, lot, serial, order or claim, and go there"), with_file},
    {Command::find, Menu::view, said("&Find"), "Ctrl+F", said("Go to the find box of the page"),
     always, true},
    {Command::refresh, Menu::view, said("&Refresh"), "F5", said("Read the clinic file again"),
     idle_with_file},
    {Command::larger_text, Menu::view, said("Lar&ger text"), "Ctrl++",
     said("Show everything in larger letters"), always, true},
    {Command::smaller_text, Menu::view, said("S&maller text"), "Ctrl+-",
     said("Show everything in smaller letters"), always},
    {Command::usual_text, Menu::view, said("&Usual text size"), "Ctrl+Alt+0",
     said("Show letters in the size that the desktop asks for"), always},
    {Command::usual_columns, Menu::view, said("Back to the usual &columns"), "",
     said("Forget the widths and the order that were given to lists by hand"), always},
    {Command::help, Menu::help, said("&Help"), "F1", said("How to do what this page is for"),
     always},
    {Command::keys, Menu::help, said("&Keys"), "Shift+F1", said("All keys of the program"), always},
    {Command::about, Menu::help, said("&About Sparewell"), "", said("Version and caution"), always},
}};

}  // namespace

std::span<const CommandSpec> command_table() {
  return table;
}

const CommandSpec& command_spec(Command command) {
  return *std::ranges::find(table, command, &CommandSpec::command);
}

std::string_view menu_title(Menu menu) {
  static constexpr std::array<std::string_view, 9> titles{
      "&File", "&Orders", "&Patients", "&Shelf", "&Wear", "&Billing", "&Lists", "&View", "&Help"};
  return titles[static_cast<std::size_t>(menu)];
}

std::string plain_label(const CommandSpec& spec) {
  std::string text{spec.label};
  std::erase(text, '&');
  if (text.ends_with("...")) text.resize(text.size() - 3);
  return text;
}

std::vector<KeyLine> key_list() {
  std::vector<KeyLine> lines;
  for (const auto& spec : table) {
    if (!spec.key.empty()) lines.push_back({std::string{spec.key}, plain_label(spec)});
  }
  lines.push_back(
      {said("Tab, Shift+Tab"), said("Go to the next or the previous part of the page")});
  lines.push_back({said("Enter in the list of today"), said("Do what the chosen row asks for")});
  lines.push_back({said("Enter in the list of orders"), said("Receive a delivery of the order")});
  lines.push_back({said("Enter in the list of findings of billing"), said("Answer the finding")});
  lines.push_back({said("Enter in the scan field"), said("Take over what the label says")});
  lines.push_back(
      {said("Enter in the list of early endings"), said("Go to the patient of the part")});
  lines.push_back(
      {said("Enter in the list of parts held back"), said("Go to the patient of the part")});
  lines.push_back({said("Up, Down, Page Up, Page Down, Home, End"), said("Move in a list")});
  lines.push_back(
      {say("Arrow keys, Home, End in a picture"), say("Go from one part of it to the next")});
  lines.push_back({say("Ctrl+C in a picture"), say("Copy it as a picture")});
  lines.push_back({say("Shift+F10 or the Menu key in a picture"),
                   say("Copy it as a table, read it as text, or print it")});
  lines.push_back({said("Down in a find box"), said("Go to the list below it")});
  lines.push_back({said("Esc in a find box"), said("Empty it")});
  lines.push_back({"Alt with an underlined letter", said("Open that menu or use that control")});
  lines.push_back({"F10", said("Go to the menus")});
  return lines;
}

}  // namespace sparewell::desk
