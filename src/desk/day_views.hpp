/// What the window shows of a day, prepared in a job: each takes long enough to be felt where there
/// are many patients.
#pragma once

#include <vector>

#include "desk/day.hpp"
#include "desk/search/search_index.hpp"
#include "desk/table.hpp"
#include "desk/today/today_page.hpp"

namespace sparewell::desk {

struct DayViews {
  DayPtr day;         ///< nullptr when the job was stopped; the others are empty then
  TodayWorkPtr work;  ///< nullptr while there are the records alone
  SearchIndexPtr index;
  std::vector<TableRow> patients;  ///< see patient_rows
};

[[nodiscard]] DayViews prepare_views(DayPtr day);

}  // namespace sparewell::desk
