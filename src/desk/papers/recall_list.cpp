#include "desk/papers/recall_list.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
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
  sheet.title = say("Recall of {}: {}", found.item.text, what);
  sheet.head = {{said("Item"), item_words(notice.item)},
                {said("Lot"), found.lot.empty() ? std::string{said("all lots")} : found.lot},
                {said("Date"), found.today}};
  sheet.caution = recall_caution();
  return sheet;
}

std::string look_words(supply::LotMatch match) {
  switch (match) {
    case supply::LotMatch::recalled:
      return said("Recalled");
    case supply::LotMatch::written_alike:
      return said("Lot written differently: look at the part");
    default:
      return said("Lot not recorded: look at the part");
  }
}

std::string stands_words(const supply::RecalledUnit& recalled) {
  if (recalled.in_hands) return said("Has it");
  const auto& unit = recalled.unit;
  const auto until = unit.ended_on ? say("Had it until {}", date_words(*unit.ended_on))
                                   : said("Had it until an unknown day");
  return unit.end_reason ? fmt::format("{} ({})", until, shown_word(*unit.end_reason)) : until;
}

ListSheet patients_sheet(const RecallNotice& notice, Names names) {
  auto sheet = new_sheet(notice, said("Patients"), said("patients to call"));
  const bool named = names == Names::shown;
  sheet.columns = {{said("Patient")}};
  if (named) sheet.columns.push_back({said("Name")});
  sheet.columns.insert(sheet.columns.end(), {{said("Next visit"), ListFormat::date},
                                             {said("Part")},
                                             {said("Side")},
                                             {said("Lot")},
                                             {said("Serial")},
                                             {said("Issued"), ListFormat::date},
                                             {said("To do")},
                                             {said("Called on"), ListFormat::fill_in},
                                             {said("Part looked at"), ListFormat::fill_in},
                                             {said("Part back"), ListFormat::fill_in},
                                             {said("Remark"), ListFormat::fill_in}});
  for (const auto& patient : notice.found.patients) {
    for (const auto& recalled : patient.units) {
      const auto& unit = recalled.unit;
      exchange::ListRow row;
      row.strong = recalled.in_hands;
      row.cells = {patient.patient.ref.text};
      if (named) row.cells.emplace_back(full_name(patient.patient));
      row.cells.insert(row.cells.end(),
                       {day_or(patient.visit, said("none booked")), stands_words(recalled),
                        shown_word(unit.side), lot_or_none(unit.lot), unit.serial, unit.issued_on,
                        look_words(recalled.match)});
      row.cells.resize(sheet.columns.size());
      sheet.rows.push_back(std::move(row));
    }
  }
  if (sheet.rows.empty()) sheet.closing = {said("No patient is recorded with a part of it.")};
  return sheet;
}

ListSheet shelf_sheet(const RecallNotice& notice) {
  auto sheet = new_sheet(notice, said("Shelf"), said("pieces on shelves"));
  sheet.columns = {{said("Place")},
                   {said("Lot")},
                   {said("Use by"), ListFormat::date},
                   {said("Pieces"), ListFormat::whole},
                   {said("To do")},
                   {said("Taken away"), ListFormat::fill_in},
                   {said("Remark"), ListFormat::fill_in}};
  for (const auto& stock : notice.found.stock) {
    const auto& [lot, place, quantity] = stock.level;
    sheet.rows.push_back(
        {{place, lot_or_none(lot.lot), day_or(lot.use_by, said(no_date_words)),
          pieces_cell(quantity),
          stock.quarantined() ? std::string{said("In quarantine")} : look_words(stock.match),
          std::monostate{}, std::monostate{}},
         !stock.quarantined()});
  }
  if (sheet.rows.empty()) sheet.closing = {said("No piece of it is recorded on a shelf.")};
  return sheet;
}

ListSheet orders_sheet(const RecallNotice& notice) {
  auto sheet = new_sheet(notice, said("Open orders"), said("orders that may bring more"));
  sheet.columns = {{said("Supplier")},
                   {said("Order")},
                   {said("State")},
                   {said("Ordered"), ListFormat::date},
                   {said("To come"), ListFormat::whole},
                   {said("Supplier told"), ListFormat::fill_in},
                   {said("Remark"), ListFormat::fill_in}};
  for (const auto& line : notice.found.orders) {
    const bool draft = line.state == OrderState::draft;
    sheet.rows.push_back({{line.supplier.text, line.order_ref,
                           std::string{draft ? said("Not sent yet") : said("Ordered")},
                           line.ordered_on, pieces_cell(draft ? line.quantity : line.outstanding()),
                           std::monostate{}, std::monostate{}},
                          false});
  }
  if (sheet.rows.empty()) sheet.closing = {said("No order of it is open.")};
  return sheet;
}

}  // namespace

exchange::ListWorkbook recall_list(const RecallNotice& notice, Names names,
                                   const std::string& clinic_name) {
  return {say("Recall of {}", notice.found.item.text),
          clinic_name,
          notice.found.today,
          {patients_sheet(notice, names), shelf_sheet(notice), orders_sheet(notice)}};
}

}  // namespace sparewell::desk
