#include "desk/away_rows.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/stock_list.hpp"
#include "desk/wording.hpp"
#include "supply/lending.hpp"
#include "supply/supplier_credit.hpp"

namespace sparewell::desk {
namespace {

std::string id_of(const Loan& loan) {
  return fmt::format("loan {}", loan.number);
}
std::string id_of(const SupplierReturn& sent) {
  return fmt::format("return {}", sent.number);
}
std::string id_of(const StockLevel& level) {
  return fmt::format("transit\n{}\n{}\n{}\n{}", level.lot.item.text, level.lot.lot,
                     date_words(level.lot.use_by, ""), level.place);
}

TableRow row_of(std::string id, const char* what, const std::string& with, const Lot& lot,
                int pieces, Cell due) {
  TableRow row;
  row.id = std::move(id);
  row.cells = {{what, std::nullopt},
               {with, std::nullopt},
               {lot.item.text, std::nullopt},
               {lot.lot.empty() ? said("none") : lot.lot, std::nullopt},
               count_cell(pieces),
               std::move(due)};
  row.search = folded(fmt::format("{} {} {} {}", what, with, lot.item.text, lot.lot));
  return row;
}

TableRow loan_row(const Loan& loan, Date today) {
  const bool overdue = loan.overdue_on(today);
  auto due = date_cell(loan.due_on, "");
  if (overdue) {
    due.text += say(", {} overdue", count_words(days_between(loan.due_on, today), "day", "days"));
  }
  auto row = row_of(id_of(loan), said("On loan"),
                    fmt::format("{} {}", loan.patient.text, shown_word(loan.side)), loan.lot,
                    loan.outstanding(), std::move(due));
  row.strong = overdue;
  return row;
}

TableRow return_row(const SupplierReturn& sent) {
  const auto rest = sent.outstanding();
  return row_of(id_of(sent), said("At supplier"),
                fmt::format("{}, {}", sent.supplier.text, sent.reference), sent.lot, sent.quantity,
                {rest ? amount_words(*rest) : std::string{said("not known")}, std::nullopt});
}

}  // namespace

std::string id_of_away(const Away& away) {
  return std::visit([](const auto& each) { return id_of(each); }, away);
}

std::vector<Column> away_columns() {
  return {{said("Where"), 11, Align::left, ""},
          {said("With"), 18, Align::left, said("The patient, the supplier, or the way"), 1},
          {said("Item"), 12, Align::left, ""},
          {said("Lot"), 10, Align::left, ""},
          {said("Pieces"), 7, Align::right, ""},
          {said("Due"), 22, Align::left, said("The day of return, or the credit"), 1}};
}

std::vector<TableRow> away_rows(const Day& day) {
  std::vector<TableRow> rows;
  const auto& clinic = day.clinic();
  for (const auto& loan : supply::open_loans(clinic.loans)) {
    rows.push_back(loan_row(loan, day.today()));
  }
  for (const auto& sent : supply::open_credits(clinic.supplier_returns)) {
    rows.push_back(return_row(sent));
  }
  for (const auto& level : transits(clinic)) {
    rows.push_back(row_of(id_of(level), said("In transit"), level.place, level.lot, level.quantity,
                          {said("to arrive"), std::nullopt}));
  }
  return rows;
}

std::optional<Away> find_away(const Day& day, const std::string& id) {
  const auto& clinic = day.clinic();
  for (const auto& loan : clinic.loans) {
    if (id_of(loan) == id && loan.outstanding() > 0) return loan;
  }
  for (const auto& sent : clinic.supplier_returns) {
    if (id_of(sent) == id && sent.is_open()) return sent;
  }
  for (const auto& level : transits(clinic)) {
    if (id_of(level) == id) return level;
  }
  return std::nullopt;
}

std::string away_action(const std::optional<Away>& away) {
  if (!away) return said("Se&ttle...");
  if (std::holds_alternative<Loan>(*away)) return said("Came &back...");
  return std::holds_alternative<SupplierReturn>(*away) ? said("&Credited...") : said("&Arrived...");
}

std::string credit_sum_words(const Day& day) {
  const auto sums = supply::credit_sums(supply::open_credits(day.clinic().supplier_returns));
  return sums.empty() ? std::string{} : say("Credits due: {}", amounts_words(sums));
}

}  // namespace sparewell::desk
