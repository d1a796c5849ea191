#include <fmt/format.h>

#include "batch/stock_command.hpp"
#include "desk/shelf_page.hpp"
#include "desk/stock_list.hpp"
#include "desk/stock_words.hpp"
#include "desk/wording.hpp"
#include "supply/lending.hpp"
#include "supply/supplier_credit.hpp"

namespace sparewell::batch {
namespace {

Json json_of(const Loan& loan, Date today) {
  return {{"loan", loan.number},
          {"patient_ref", loan.patient.text},
          {"side", word(loan.side)},
          {"item_code", loan.lot.item.text},
          {"lot", loan.lot.lot},
          {"quantity", loan.quantity},
          {"outstanding", loan.outstanding()},
          {"came_back", loan.came_back},
          {"kept", loan.kept},
          {"lost", loan.lost},
          {"lent_on", batch::json_of(loan.lent_on)},
          {"due_on", batch::json_of(loan.due_on)},
          {"overdue", loan.overdue_on(today)},
          {"note", loan.note}};
}

Json json_of(const SupplierReturn& sent) {
  return {{"return", sent.number},
          {"supplier", sent.supplier.text},
          {"reference", sent.reference},
          {"item_code", sent.lot.item.text},
          {"lot", sent.lot.lot},
          {"quantity", sent.quantity},
          {"reason", sent.reason},
          {"sent_on", batch::json_of(sent.sent_on)},
          {"currency", sent.due ? Json(sent.due->currency.code) : Json(nullptr)},
          {"due", batch::json_of(sent.due)},
          {"credited", batch::json_of(sent.credited)},
          {"outstanding", batch::json_of(sent.outstanding())}};
}

Json json_of(const store::Booking& booking, const ItemCode& item) {
  Json movements = Json::array();
  const auto of_item = desk::movements_of(booking, item);
  for (const auto& movement : of_item) movements.push_back(batch::json_of(movement));
  return {{"booking", booking.id.value},
          {"who", booking.who},
          {"at", booking.at},
          {"why", booking.why},
          {"reversed_by", booking.reversed_by ? Json(booking.reversed_by->value) : Json(nullptr)},
          {"movements", std::move(movements)},
          {"other_movements", booking.movements.size() - of_item.size()}};
}

void known_or_wrong_use(const Clinic& clinic, const desk::StockQuestion& question) {
  if (!question.item.empty() && ClinicIndex{clinic}.item({question.item}) == nullptr) {
    throw WrongUse{fmt::format("The catalogue has no item '{}'; check the code.", question.item)};
  }
}

int list(const Context& context, const desk::StockQuestion& question) {
  const Date today = context.today();
  const auto clinic = context.clinic_on(today);
  known_or_wrong_use(clinic, question);
  Json rows = Json::array();
  std::vector<std::string> lines;
  for (const auto& level : desk::stock_levels(clinic, question, today)) {
    rows.push_back(batch::json_of(level));
    rows.back()["sort"] = word(sort_of_place(clinic.places, level.place));
    rows.back()["state"] = desk::lot_state_words(desk::lot_state(level, clinic.places, today));
    lines.push_back(desk::stock_line_words(level, clinic, today));
  }
  return print_list(context, "stock", std::move(rows), lines, "Nothing lies there.");
}

int loans(const Context& context, bool overdue) {
  const Date today = context.today();
  Json rows = Json::array();
  std::vector<std::string> lines;
  for (const auto& loan : supply::open_loans(context.clinic_on(today).loans)) {
    if (overdue && !loan.overdue_on(today)) continue;
    rows.push_back(json_of(loan, today));
    lines.push_back(desk::loan_words(loan, today));
  }
  return print_list(context, "loans", std::move(rows), lines,
                    overdue ? "No loan is overdue." : "Nothing is on loan.");
}

int credits(const Context& context) {
  Json rows = Json::array();
  std::vector<std::string> lines;
  const auto open = supply::open_credits(context.clinic_on(context.today()).supplier_returns);
  for (const auto& sent : open) {
    rows.push_back(json_of(sent));
    lines.push_back(desk::credit_words(sent));
  }
  const auto sums = supply::credit_sums(open);
  if (context.json) {
    Json json_sums = Json::object();
    for (const auto& sum : sums) json_sums[sum.currency.code] = batch::json_of(std::optional{sum});
    print({{"today", batch::json_of(context.today())},
           {"credits", std::move(rows)},
           {"sums", std::move(json_sums)}});
    return done;
  }
  if (!sums.empty()) lines.push_back(fmt::format("In all {} due.", desk::amounts_words(sums)));
  return print_list(context, "credits", std::move(rows), lines, "No credit is open.");
}

int transits(const Context& context) {
  Json rows = Json::array();
  std::vector<std::string> lines;
  for (const auto& level : desk::transits(context.clinic_on(context.today()))) {
    rows.push_back(batch::json_of(level));
    lines.push_back(desk::transit_words(level));
  }
  return print_list(context, "transits", std::move(rows), lines, "Nothing is in transit.");
}

int history(const Context& context, const std::string& item, int most) {
  const auto store = context.open(store::OpenMode::existing);
  const auto snapshot = store->read();
  if (!snapshot->item({item})) {
    throw WrongUse{fmt::format("The catalogue has no item '{}'; check the code.", item)};
  }
  Json rows = Json::array();
  std::vector<std::string> lines;
  for (const auto& booking : snapshot->bookings_of({item}, most)) {
    rows.push_back(json_of(booking, {item}));
    for (auto& line : desk::booking_lines(booking, {item})) lines.push_back(std::move(line));
  }
  return print_list(context, "bookings", std::move(rows), lines, "It has never moved.");
}

template <class Run>
void runs(Command* command, Context& context, Run run) {
  command->callback([&context, run] { context.run = run; });
}

}  // namespace

void add_stock_lists(Command& stock, Context& context) {
  auto* listed = stock.add_subcommand("list", "What lies where");
  const auto question = std::make_shared<desk::StockQuestion>();
  listed->add_option("--place", question->place, "Only at this place");
  listed->add_option("--item", question->item, "Only of this item");
  listed
      ->add_option("--expiring", question->expiring,
                   "Only lots that expire within so many days, and expired ones")
      ->within(0, 36'500);
  runs(listed, context, [&context, question] { return list(context, *question); });

  auto* lent = stock.add_subcommand("loans", "Parts on loan with patients, the first due first");
  const auto overdue = std::make_shared<bool>(false);
  lent->add_flag("--overdue", *overdue, "Only those that should be back");
  runs(lent, context, [&context, overdue] { return loans(context, *overdue); });

  runs(stock.add_subcommand("credits", "Credits that suppliers owe for parts sent back"), context,
       [&context] { return credits(context); });
  runs(stock.add_subcommand("transits", "What is under way between places"), context,
       [&context] { return transits(context); });

  struct History {
    std::string item;
    int most = 20;
  };
  auto* told = stock.add_subcommand("history", "The last bookings of an item, newest first");
  const auto asked = std::make_shared<History>();
  told->add_option("--item", asked->item, "The item's code")->required();
  told->add_option("--most", asked->most, "How many bookings (default 20)")->within(1, 100'000);
  runs(told, context, [&context, asked] { return history(context, asked->item, asked->most); });
}

}  // namespace sparewell::batch
