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

constexpr std::array<CommandSpec, 90> table{{
    {Command::open_file, Menu::file, to_say("&Open clinic file..."), "Ctrl+O",
     to_say("Open another clinic file"), idle},
    {Command::new_file, Menu::file, to_say("&New clinic file..."), "Ctrl+N",
     to_say("Make an empty clinic file"), idle},
    {Command::import_folder, Menu::file, to_say("&Import folder..."), "Ctrl+I",
     to_say("Bring a folder of CSV files into the clinic file"), idle_with_file, true},
    {Command::clinic_details, Menu::file, to_say("Clinic &details..."), "Ctrl+D",
     to_say("Name, delivery address, currency, main place, service target, start of the records"),
     idle_with_file},
    {Command::undo, Menu::file, to_say("&Undo"), "Ctrl+Z",
     to_say("Take back what was done last in this run"), can_undo, true},
    {Command::print_page, Menu::file, to_say("&Print..."), "Ctrl+Alt+P",
     to_say("See the list of the page as it would be printed, and print it"), can_print},
    {Command::quit, Menu::file, to_say("&Quit"), "Ctrl+Q", to_say("Close the program"), always,
     true},
    {Command::write_orders, Menu::orders, to_say("&Write order workbooks..."), "Ctrl+W",
     to_say("Write one workbook for each supplier"), can_write},
    {Command::mark_as_sent, Menu::orders, to_say("&Mark as sent..."), "Ctrl+M",
     to_say("Say which written orders went to their suppliers; they then count as on order"),
     can_mark},
    {Command::play_policy, Menu::orders, to_say("&Play the policy"), "Ctrl+Y",
     to_say(
         "See what the order policy saves beside min-max levels and ordering when nothing is left"),
     idle_with_file, true},
    {Command::compare_decisions, Menu::orders, to_say("What &if"), "Ctrl+Shift+Y",
     to_say("Set ordering today beside waiting, another target and the loss of a supplier"),
     idle_with_file},
    {Command::held_back, Menu::orders, to_say("&Held back"), "Ctrl+9",
     to_say(
         "What is needed and not ordered: for the budget, a sensitivity or a size that no longer "
         "fits"),
     always},
    {Command::suppliers, Menu::orders, to_say("&Suppliers"), "Ctrl+0",
     to_say("How suppliers keep the days that they quote, and which orders are late"), always},
    {Command::receive_delivery, Menu::orders, to_say("&Receive..."), "Ctrl+R",
     to_say("Scan or type what came, and book it to its order"), idle_with_file, true},
    {Command::place_order, Menu::orders, to_say("Place &order"), "",
     to_say("Count the chosen draft as sent to its supplier"), can_place},
    {Command::approve_order, Menu::orders, to_say("&Approve order..."), "",
     to_say("Say who approved the chosen order"), can_approve},
    {Command::amend_line, Menu::orders, to_say("Amend &line..."), "Ctrl+L",
     to_say("Change, add or drop a line of the chosen order"), can_amend},
    {Command::back_order, Menu::orders, to_say("&Back-order..."), "",
     to_say("Note that the supplier sends the rest of a line later"), can_back_order},
    {Command::cancel_order, Menu::orders, to_say("&Cancel order..."), "",
     to_say("Cancel what has not come of the chosen order"), can_cancel},
    {Command::reprint_order, Menu::orders, to_say("Reprint wor&kbook..."), "",
     to_say("Write the workbook of any revision of the chosen order again"), can_reprint},
    {Command::issue_part, Menu::patients, to_say("&Issue a part..."), "Ctrl+Shift+I",
     to_say("Check a part for the chosen patient, and hand it over"), can_issue},
    {Command::end_part, Menu::patients, to_say("&End this part..."), "Ctrl+Shift+E",
     to_say("Record that the chosen part is worn out, lost, given back or was issued by mistake"),
     can_end_part},
    {Command::book_parts, Menu::patients, to_say("&Book parts for a visit..."), "Ctrl+B",
     to_say("Book pieces that the chosen patient needs on a day, so that they are there"),
     can_issue, true},
    {Command::cancel_booking, Menu::patients, to_say("&Cancel a booking..."), "Ctrl+Shift+B",
     to_say("Give up pieces that are booked for the chosen patient"), can_cancel_booking},
    {Command::patient_place, Menu::patients, to_say("Change &place..."), "",
     to_say("Say to which branch the chosen patient belongs"), can_issue},
    {Command::check_trip, Menu::patients, to_say("Check a &trip..."), "Ctrl+K",
     to_say("See whether the chosen patient's parts last on a trip, and what to pack"), can_issue},
    {Command::findings, Menu::patients, to_say("Finding&s"), "Ctrl+Shift+F",
     to_say("What the checks find about what the chosen patient wears"), can_issue, true},
    {Command::everyones_findings, Menu::patients, to_say("Findings of e&veryone..."),
     "Ctrl+Shift+J",
     to_say("Who wears what does not suit: sensitivities, sizes, suspension and lots"),
     idle_with_file},
    {Command::other_items, Menu::patients, to_say("&Other items..."), "Ctrl+Shift+A",
     to_say("Which other items could do the work of the chosen part, the most suitable first"),
     can_look_for_others},
    {Command::decide_part, Menu::patients, to_say("Decide &about it..."), "Ctrl+Shift+O",
     to_say("Record a clinician's decision about the chosen finding, or withdraw it"), can_decide},
    {Command::note_sensitivity, Menu::patients, to_say("&Note a sensitivity..."), "Ctrl+Shift+N",
     to_say("Record what the chosen patient reacts to, and see what speaks against it"), can_issue},
    {Command::note_substance, Menu::patients, to_say("&Kinds of substances..."), "",
     to_say("Record how two substances are related, and see who is newly affected"),
     idle_with_file},
    {Command::parts_list, Menu::patients, to_say("Parts &list..."), "Ctrl+Shift+K",
     to_say("Write the list of the chosen patient's parts with their care, to take home"),
     can_issue},
    {Command::record_measurement, Menu::patients, to_say("Record a &measurement..."), "Ctrl+U",
     to_say("Record the circumference of the chosen patient's limb"), can_issue, true},
    {Command::show_fit, Menu::patients, to_say("&Fit and trend..."), "Ctrl+Shift+U",
     to_say("See how the chosen patient's limbs change, and until when the sizes worn fit"),
     can_issue},
    {Command::record_reaction, Menu::patients, to_say("Record a &reaction..."), "Ctrl+H",
     to_say("Write down a reaction of the chosen patient's skin"), can_issue, true},
    {Command::reactions, Menu::patients, to_say("Reactions and s&uspects..."), "Ctrl+Shift+H",
     to_say("Set the chosen patient's reactions beside what was worn, and see what they speak for"),
     can_issue},
    {Command::reaction_healed, Menu::patients, to_say("A reaction &healed..."), "",
     to_say("Record the last day of a reaction of the chosen patient's skin"), can_issue},
    {Command::sheet_again, Menu::patients, to_say("&Delivery sheet again..."), "Ctrl+Shift+D",
     to_say(
         "Write the delivery sheet of what was handed over with the chosen part again, as a copy"),
     can_work_on_sheet, true},
    {Command::sheet_signed, Menu::patients, to_say("Si&gned sheet..."), "Ctrl+Shift+G",
     to_say("Record on which day the patient signed the delivery sheet of the chosen part"),
     can_work_on_sheet},
    {Command::stock_move, Menu::shelf, to_say("&Move..."), "Ctrl+Shift+M",
     to_say("Send pieces of the chosen lot to another place"), can_work_on_lot},
    {Command::stock_quarantine, Menu::shelf, to_say("&Quarantine or release..."), "Ctrl+Shift+Q",
     to_say("Hold pieces of the chosen lot back, or let them out again"), can_work_on_lot},
    {Command::stock_write_off, Menu::shelf, to_say("&Write off..."), "Ctrl+Shift+W",
     to_say("Take expired, damaged or lost pieces of the chosen lot off the books"),
     can_work_on_lot},
    {Command::stock_return, Menu::shelf, to_say("&Return to supplier..."), "Ctrl+Shift+R",
     to_say("Send pieces of the chosen lot back and expect a credit for them"), can_work_on_lot},
    {Command::stock_lend, Menu::shelf, to_say("&Lend..."), "Ctrl+Shift+L",
     to_say("Lend pieces of the chosen lot to a patient on trial"), can_work_on_lot},
    {Command::stock_settle, Menu::shelf, to_say("&Settle what is away..."), "Ctrl+Shift+S",
     to_say("Record what became of the chosen loan, return or transfer"), can_settle, true},
    {Command::stock_reverse, Menu::shelf, to_say("&Take a booking back..."), "Ctrl+Shift+T",
     to_say("Undo a movement of the chosen item that was a mistake"), can_work_on_item},
    {Command::stock_places, Menu::shelf, to_say("&Places..."), "Ctrl+Shift+P",
     to_say("Record a place, and say what lying there means"), idle_with_file, true},
    {Command::constituents, Menu::shelf, to_say("&Constituents..."), "Ctrl+Shift+X",
     to_say("Change what the chosen item declares, and see who is newly affected"),
     can_work_on_item},
    {Command::branch_moves, Menu::shelf, to_say("Moves &between branches"), "Ctrl+G",
     to_say(
         "What to send from one branch to another, and why; the same again goes back to the items"),
     has_branches},
    {Command::send_moves, Menu::shelf, to_say("Sen&d moves..."), "Ctrl+Shift+V",
     to_say("Send the chosen move between branches, or all of them"), can_send},
    {Command::test_forecasts, Menu::wear, to_say("&Test the forecasts"), "Ctrl+T",
     to_say("Replay the clinic's own history and see how good the forecasts would have been"),
     idle_with_file},
    {Command::wear_effects, Menu::wear, to_say("What changes &lives"), "Ctrl+5",
     to_say("How activity, kneeling, hours of wear, sweating and sport change the life of parts"),
     always, true},
    {Command::wear_early, Menu::wear, to_say("&Early endings"), "Ctrl+6",
     to_say("Lots and items that may be defective, and parts that wore out far too early"), always},
    {Command::compare_books, Menu::billing, to_say("&Compare the books"), "F7",
     to_say("Hold what was handed out, billed, paid, ordered, received and invoiced against one "
            "another"),
     idle_with_file},
    {Command::answer_finding, Menu::billing, to_say("&Answer..."), "F8",
     to_say(
         "Say what is decided about the chosen finding: asked, accepted, corrected or written off"),
     can_answer},
    {Command::finding_patient, Menu::billing, to_say("&Go to the patient"), "",
     to_say("Show the patient of the chosen finding"), can_go_to_patient},
    {Command::note_paper, Menu::billing, to_say("&Note a paper..."), "F9",
     to_say("Put a paper of the chosen part on record: order, reason, condition, cost share"),
     can_note_paper},
    {Command::read_claims, Menu::billing, to_say("&Read claims..."), "Ctrl+Shift+Z",
     to_say("Read claims that were sent to payers, from an X12 837P file or a table"),
     idle_with_file, true},
    {Command::read_payments, Menu::billing, to_say("Read pay&ments..."), "Ctrl+P",
     to_say("Read what payers answered and paid, from an X12 835 file or a table"), idle_with_file},
    {Command::payer_rules, Menu::billing, to_say("Payers' r&ules..."), "",
     to_say("What payers require and pay, with its source; add or change rules"), idle_with_file,
     true},
    {Command::billing_reports, Menu::billing, to_say("Write re&ports..."), "",
     to_say("What is unbilled, findings, margins and suppliers' variances, as workbooks"),
     idle_with_file},
    {Command::close_month, Menu::billing, to_say("C&lose a month..."), "",
     to_say("Keep the records of a month as they are, with their totals"), idle_with_file, true},
    {Command::month_changes, Menu::billing, to_say("Changes a&fter closing..."), "",
     to_say("What was added, taken away or changed in closed months since"), idle_with_file},
    {Command::stock_list, Menu::lists, to_say("Write &stock list..."), "",
     to_say("What lies where, with use-by dates and values, as a workbook"), idle_with_file},
    {Command::month_forecast, Menu::lists, to_say("&Forecast by month..."), "",
     to_say("Pieces of each item that will be needed month by month, as a workbook"),
     idle_with_file},
    {Command::count_sheet, Menu::lists, to_say("Write &count sheet..."), "",
     to_say("A sheet to fill in at the shelf, what matters most first"), idle_with_file, true},
    {Command::enter_count, Menu::lists, to_say("&Enter a count..."), "Ctrl+E",
     to_say("Read a filled-in count sheet, look at the differences and book them"), idle_with_file},
    {Command::price_list, Menu::lists, to_say("Supplier &price list..."), "",
     to_say("See what a supplier's price list changes, and take it over"), idle_with_file, true},
    {Command::recall, Menu::lists, to_say("&Recall..."), "Ctrl+Shift+C",
     to_say("Who has or had a recalled part, where more of it lies, and taking it out of use"),
     idle_with_file, true},
    {Command::visit_sheets, Menu::lists, to_say("&Visit sheets..."), "Ctrl+J",
     to_say("A page for each patient expected on a day: what is near its end, what to have ready"),
     idle_with_file, true},
    {Command::page_today, Menu::view, to_say("&Today"), "F2",
     to_say("What needs a person today in ordering, with patients and in billing"), always},
    {Command::page_orders, Menu::view, to_say("&Order today"), "Ctrl+1",
     to_say("What to order today, and why"), always},
    {Command::page_patients, Menu::view, to_say("&Patients"), "Ctrl+2",
     to_say("Patients, their parts and how long these will last"), always},
    {Command::page_shelf, Menu::view, to_say("&Shelf"), "Ctrl+3",
     to_say("What is on hand, what of it counts, and what is on its way"), always},
    {Command::page_wear, Menu::view, to_say("&Wear"), "Ctrl+4",
     to_say("How far the forecasts of wear can be trusted"), always},
    {Command::page_plan, Menu::view, to_say("P&lan"), "Ctrl+8",
     to_say("What the order policy saves beside common ways of ordering"), always},
    {Command::page_deliveries, Menu::view, to_say("&Deliveries"), "Ctrl+7",
     to_say("All orders, what is still to come of them, and receiving it"), always},
    {Command::page_billing, Menu::view, to_say("&Billing"), "F6",
     to_say("What does not agree between the books, and what was decided about it"), always},
    {Command::search_everything, Menu::view, to_say("Search &everything"), "F3",
     to_say("Find a patient, item, lot, serial, order or claim, and go there"), with_file},
    {Command::find, Menu::view, to_say("&Find"), "Ctrl+F", to_say("Go to the find box of the page"),
     always, true},
    {Command::refresh, Menu::view, to_say("&Refresh"), "F5", to_say("Read the clinic file again"),
     idle_with_file},
    {Command::larger_text, Menu::view, to_say("Lar&ger text"), "Ctrl++",
     to_say("Show everything in larger letters"), always, true},
    {Command::smaller_text, Menu::view, to_say("S&maller text"), "Ctrl+-",
     to_say("Show everything in smaller letters"), always},
    {Command::usual_text, Menu::view, to_say("&Usual text size"), "Ctrl+Alt+0",
     to_say("Show letters in the size that the desktop asks for"), always},
    {Command::usual_columns, Menu::view, to_say("Back to the usual &columns"), "",
     to_say("Forget the widths and the order that were given to lists by hand"), always},
    {Command::choose_ways, Menu::view, to_say("L&anguage and units..."), "",
     to_say("English or Spanish, a country's dates and amounts, cm or inches"), always},
    {Command::help, Menu::help, to_say("&Help"), "F1", to_say("How to do what this page is for"),
     always},
    {Command::keys, Menu::help, to_say("&Keys"), "Shift+F1", to_say("All keys of the program"),
     always},
    {Command::about, Menu::help, to_say("&About Sparewell"), "", to_say("Version and caution"),
     always},
}};

/// With the label and the help in the language of the program; what said gives stays where it is.
CommandSpec in_words(CommandSpec spec) {
  spec.label = said(spec.label.data());
  spec.help = said(spec.help.data());
  return spec;
}

}  // namespace

std::vector<CommandSpec> command_table() {
  std::vector<CommandSpec> translated;
  translated.reserve(table.size());
  for (const auto& spec : table) translated.push_back(in_words(spec));
  return translated;
}

CommandSpec command_spec(Command command) {
  return in_words(*std::ranges::find(table, command, &CommandSpec::command));
}

std::string_view menu_title(Menu menu) {
  static constexpr std::array<const char*, 9> titles{
      to_say("&File"),    to_say("&Orders"), to_say("&Patients"), to_say("&Shelf"), to_say("&Wear"),
      to_say("&Billing"), to_say("&Lists"),  to_say("&View"),     to_say("&Help")};
  return said(titles[static_cast<std::size_t>(menu)]);
}

std::string plain_label(const CommandSpec& spec) {
  std::string text{spec.label};
  std::erase(text, '&');
  if (text.ends_with("...")) text.resize(text.size() - 3);
  return text;
}

std::vector<KeyLine> key_list() {
  std::vector<KeyLine> lines;
  for (const auto& spec : command_table()) {
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
  lines.push_back(
      {said("Alt with an underlined letter"), said("Open that menu or use that control")});
  lines.push_back({"F10", said("Go to the menus")});
  return lines;
}

}  // namespace sparewell::desk
