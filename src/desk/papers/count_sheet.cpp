#include "desk/papers/count_sheet.hpp"

#include <set>

#include "clinic/say.hpp"
#include "desk/papers/list_cells.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using exchange::ListFormat;

std::string places_words(const std::vector<supply::CountCandidate>& candidates) {
  std::set<std::string> places;
  for (const auto& candidate : candidates) places.insert(candidate.place);
  return list_words({places.begin(), places.end()});
}

exchange::ListRow row_of(const StockLevel& level, const Item* item, std::size_t number) {
  return {{static_cast<double>(number), level.place, level.lot.item.text,
           item ? item_words(*item) : std::string{}, lot_or_none(level.lot.lot),
           day_or(level.lot.use_by, said(no_date_words)), pieces_cell(level.quantity),
           std::monostate{}, std::monostate{}},
          false};
}

}  // namespace

exchange::ListWorkbook count_sheet(const std::vector<supply::CountCandidate>& candidates,
                                   const Clinic& clinic, Date today, bool blind) {
  exchange::ListSheet sheet;
  sheet.name = said("Count");
  sheet.title = say("Count sheet, {}", date_words(today));
  sheet.head = {{said("Date"), today},
                {said(count_titles::place), places_words(candidates)},
                {said("Counted by"), std::string{}}};
  sheet.caution = said(
      "Write what lies there, 0 where nothing does; leave blank what was not counted. Lots that "
      "are "
      "not listed: add a row below with place, item, lot and use-by date. Put expired parts "
      "aside.");
  sheet.columns = {{said("No."), ListFormat::whole},
                   {said(count_titles::place)},
                   {said(count_titles::item)},
                   {said("Description")},
                   {said(count_titles::lot)},
                   {said(count_titles::use_by), ListFormat::date},
                   {said(count_titles::recorded), ListFormat::whole, blind},
                   {said(count_titles::counted), ListFormat::fill_in},
                   {said(count_titles::remark), ListFormat::fill_in}};
  const ClinicIndex index{clinic};
  for (const auto& candidate : candidates) {
    for (const auto& level : candidate.levels) {
      sheet.rows.push_back(row_of(level, index.item(level.lot.item), sheet.rows.size() + 1));
    }
  }
  return {said("Count sheet"), clinic.settings.name, today, {std::move(sheet)}};
}

}  // namespace sparewell::desk
