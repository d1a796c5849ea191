#include "desk/papers/recall_list.hpp"

#include <fmt/format.h>

#include "desk/day.hpp"
#include "desk/papers/list_cells.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using exchange::ListFormat;
using exchange::ListSheet;

ListSheet new_sheet(const RecallNotice& notice, const char* name, const std::string& what) {
  const auto& found = notice.found;
  ListSheet sheet;
  sheet.name = name;
  sheet.title = fmt::format("Recall of {}: {}", found.item.text, what);
  sheet.head = {{"Item", item_words(notice.item)},
                {"Lot", found.lot.empty() ? std::string{"all lots"} : found.lot},
                {"Date", found.today}};
  sheet.caution = recall_caution();
  return sheet;
}

std::string look_words(supply::LotMatch match) {
  switch (match) {
    case supply::LotMatch::recalled:
      return "Recalled";
    case supply::LotMatch::written_alike:
      return "Lot written differently: look at the part";
    default:
      return "Lot not recorded: look at the part";
  }
}

std::string stands_words(const supply::RecalledUnit& recalled) {
  if (recalled.in_hands) return "Has it";
  const auto& unit = recalled.unit;
  return fmt::format("Had it until {}{}", date_words(unit.ended_on, "an unknown day"),
                     unit.end_reason ? fmt::format(" ({})", word(*unit.end_reason)) : "");
}

ListSheet patients_sheet(const RecallNotice& notice, Names names) {
  auto sheet = new_sheet(notice, "Patients", "patients to call");
  const bool named = names == Names::shown;
  sheet.columns = {{"Patient"}};
  if (named) sheet.columns.push_back({"Name"});
  sheet.columns.insert(sheet.columns.end(), {{"Next visit", ListFormat::date},
                                             {"Part"},
                                             {"Side"},
                                             {"Lot"},
                                             {"Serial"},
                                             {"Issued", ListFormat::date},
                                             {"To do"},
                                             {"Called on", ListFormat::fill_in},
                                             {"Part looked at", ListFormat::fill_in},
                                             {"Part back", ListFormat::fill_in},
                                             {"Remark", ListFormat::fill_in}});
  for (const auto& patient : notice.found.patients) {
    for (const auto& recalled : patient.units) {
      const auto& unit = recalled.unit;
      exchange::ListRow row;
      row.strong = recalled.in_hands;
      row.cells = {patient.patient.ref.text};
      if (named) row.cells.emplace_back(full_name(patient.patient));
      row.cells.insert(row.cells.end(),
                       {day_or(patient.visit, "none booked"), stands_words(recalled),
                        std::string{word(unit.side)}, lot_or_none(unit.lot), unit.serial,
                        unit.issued_on, look_words(recalled.match)});
      row.cells.resize(sheet.columns.size());
      sheet.rows.push_back(std::move(row));
    }
  }
  if (sheet.rows.empty()) sheet.closing = {"No patient is recorded with a part of it."};
  return sheet;
}

ListSheet shelf_sheet(const RecallNotice& notice) {
  auto sheet = new_sheet(notice, "Shelf", "pieces on shelves");
  sheet.columns = {{"Place"},
                   {"Lot"},
                   {"Use by", ListFormat::date},
                   {"Pieces", ListFormat::whole},
                   {"To do"},
                   {"Taken away", ListFormat::fill_in},
                   {"Remark", ListFormat::fill_in}};
  for (const auto& stock : notice.found.stock) {
    const auto& [lot, place, quantity] = stock.level;
    sheet.rows.push_back(
        {{place, lot_or_none(lot.lot), day_or(lot.use_by, no_date_words), pieces_cell(quantity),
          stock.quarantined() ? std::string{"In quarantine"} : look_words(stock.match),
          std::monostate{}, std::monostate{}},
         !stock.quarantined()});
  }
  if (sheet.rows.empty()) sheet.closing = {"No piece of it is recorded on a shelf."};
  return sheet;
}

ListSheet orders_sheet(const RecallNotice& notice) {
  auto sheet = new_sheet(notice, "Open orders", "orders that may bring more");
  sheet.columns = {{"Supplier"},
                   {"Order"},
                   {"State"},
                   {"Ordered", ListFormat::date},
                   {"To come", ListFormat::whole},
                   {"Supplier told", ListFormat::fill_in},
                   {"Remark", ListFormat::fill_in}};
  for (const auto& line : notice.found.orders) {
    const bool draft = line.state == OrderState::draft;
    sheet.rows.push_back(
        {{line.supplier.text, line.order_ref, std::string{draft ? "Not sent yet" : "Ordered"},
          line.ordered_on, pieces_cell(draft ? line.quantity : line.outstanding()),
          std::monostate{}, std::monostate{}},
         false});
  }
  if (sheet.rows.empty()) sheet.closing = {"No order of it is open."};
  return sheet;
}

}  // namespace

exchange::ListWorkbook recall_list(const RecallNotice& notice, Names names,
                                   const std::string& clinic_name) {
  return {fmt::format("Recall of {}", notice.found.item.text),
          clinic_name,
          notice.found.today,
          {patients_sheet(notice, names), shelf_sheet(notice), orders_sheet(notice)}};
}

}  // namespace sparewell::desk
