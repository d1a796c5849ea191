#include "desk/recall_rows.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/day.hpp"
#include "desk/find_words.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string match_words(supply::LotMatch match) {
  switch (match) {
    case supply::LotMatch::recalled:
      return said("recalled");
    case supply::LotMatch::written_alike:
      return said("lot written differently: look at the part");
    default:
      return said("lot not recorded: look at the part");
  }
}

TableRow new_row(const std::string& what, const std::string& where, const std::string& lot,
                 const std::string& detail, bool strong) {
  TableRow row;
  row.strong = strong;
  row.cells = {{what, std::nullopt},
               {where, std::nullopt},
               {lot, std::nullopt},
               {"", std::nullopt},
               {detail, std::nullopt}};
  return row;
}

TableRow unit_row(const supply::RecalledPatient& patient, const supply::RecalledUnit& recalled,
                  Names names) {
  auto who = patient.patient.ref.text;
  if (const auto name = full_name(patient.patient); names == Names::shown && !name.empty()) {
    who += fmt::format("  {}", name);
  }
  const auto detail = say("{}, issued {}, {}", shown_word(recalled.unit.side),
                          date_words(recalled.unit.issued_on), match_words(recalled.match));
  auto row = new_row(recalled.in_hands ? said("Patient has it") : said("Patient had it"), who,
                     lot_words(recalled.unit), detail, recalled.in_hands);
  if (recalled.in_hands) row.cells[3] = date_cell(patient.visit, said("none booked"));
  return row;
}

TableRow stock_row(const supply::RecalledStock& stock) {
  const auto& [lot, place, quantity] = stock.level;
  return new_row(
      stock.quarantined() ? said("In quarantine") : said("On a shelf"), place,
      lot.lot.empty() ? said("no lot recorded") : say("lot {}", lot.lot),
      fmt::format("{}, {}", count_words(quantity, "piece", "pieces"), match_words(stock.match)),
      !stock.quarantined());
}

TableRow order_row(const OrderLine& line) {
  const bool draft = line.state == OrderState::draft;
  return new_row(draft ? said("Order not sent") : said("On order"),
                 fmt::format("{}  {}", line.order_ref, line.supplier.text), said("any lot"),
                 say("{} may come",
                     count_words(draft ? line.quantity : line.outstanding(), "piece", "pieces")),
                 false);
}

}  // namespace

Table recall_table() {
  return Table{{{said("What"), 15, Align::left, ""},
                {said("Who or where"), 18, Align::left, "", 1},
                {said("Lot"), 28, Align::left, "", 1},
                {said("Next visit"), 13, Align::left, said("Of patients who have a part of it")},
                {said("Details"), 44, Align::left, "", 2}}};
}

std::vector<TableRow> recall_rows(const RecallNotice& notice, Names names) {
  std::vector<TableRow> rows;
  for (const bool in_hands : {true, false}) {
    for (const auto& patient : notice.found.patients) {
      for (const auto& unit : patient.units) {
        if (unit.in_hands == in_hands) rows.push_back(unit_row(patient, unit, names));
      }
    }
  }
  for (const auto& stock : notice.found.stock) rows.push_back(stock_row(stock));
  for (const auto& line : notice.found.orders) rows.push_back(order_row(line));
  for (std::size_t i = 0; i < rows.size(); ++i) rows[i].id = std::to_string(i);
  return rows;
}

Table item_table(const std::vector<Item>& items) {
  Table table{{{said("Item"), 14, Align::left, ""},
               {said("Description"), 40, Align::left, "", 2},
               {said("Supplier's part no."), 18, Align::left, ""},
               {said("Supplier"), 22, Align::left, "", 1}}};
  std::vector<TableRow> rows;
  for (const auto& item : items) {
    TableRow row;
    row.id = item.code.text;
    row.cells = {{item.code.text, std::nullopt},
                 {item_words(item), std::nullopt},
                 {item.supplier_item, std::nullopt},
                 {item.supplier.text, std::nullopt}};
    row.search = folded(fmt::format("{} {} {} {} {}", item.code.text, item_words(item),
                                    item.supplier_item, item.supplier.text, item.gtin));
    rows.push_back(std::move(row));
  }
  table.fill(std::move(rows));
  return table;
}

}  // namespace sparewell::desk
